import { html, nothing, svg, type TemplateResult } from 'lit';
import { DAY, startOfLocalDay, type Interval } from '../../src/calendar/index.js';
import type { PeopleAnswer } from '../../src/engine/index.js';
import { dayText, stretchText } from '../shared/format.js';
import type { PeopleStrings } from './strings.js';

const HEAD = 20;
const ROW = 34;
const BAR = 14;

/** The turns of every crew along time; those that break a limit are struck through and bear a mark. */
export function rosterPicture(
  { turns, breaches, zone }: PeopleAnswer,
  span: Interval,
  width: number,
  words: PeopleStrings,
): TemplateResult {
  const shown = turns.filter((turn) => turn.start < span.end && turn.end > span.start);
  const crews = [...new Set(turns.map((turn) => turn.crew))];
  const broken = new Map(breaches.map((breach) => [breach.assignment, breach]));
  const x = (at: number): number =>
    Math.round(((at - span.start) / (span.end - span.start)) * (width - 2) * 10) / 10 + 1;
  const days: number[] = [];
  for (let day = span.start; day <= span.end; day = startOfLocalDay(day, zone, 1)) days.push(day);
  const perDay = (width - 2) / Math.max(1, days.length - 1);
  const every = Math.max(1, Math.ceil(64 / perDay / 7) * 7);
  const named = perDay >= 64 ? 1 : every;
  const height = HEAD + crews.length * ROW + 4;
  return html`<svg
    role="img"
    width=${width}
    height=${height}
    aria-label="${words.picture}. ${words.told(words.turnCount(shown.length), words.breachCount(breaches.length))}"
  >
    ${days.map((day, index) => {
      const label = index % named === 0 && x(day) + 52 < width;
      return perDay >= 8 || index % 7 === 0
        ? svg`<line class=${index % 7 === 0 ? 'rule' : 'hair'} x1=${x(day)} x2=${x(day)} y1=${label ? 2 : HEAD} y2=${height}></line>
          ${label ? svg`<text class="soft" x=${x(day) + 3} y="12">${dayText(day, zone)}</text>` : nothing}`
        : nothing;
    })}
    ${crews.map((crew, row) => {
      const top = HEAD + row * ROW;
      return svg`<text x="4" y=${top + 11}>${crew}</text>
        ${shown
          .filter((turn) => turn.crew === crew)
          .map((turn) => {
            const left = Math.max(0, x(turn.start));
            const wide = Math.max(2, Math.min(width, x(turn.end)) - left);
            const breach = broken.get(turn.id);
            const middle = left + wide / 2;
            return svg`<g class="turn">
              <title>${turn.id}, ${stretchText(turn.start, turn.end, zone)}${breach ? `: ${breach.name}` : ''}</title>
              <rect class=${breach ? 'shut' : 'bar'} x=${left} y=${top + 15} width=${wide} height=${BAR}></rect>
              ${
                breach
                  ? svg`<path class="slash" d="M${left} ${top + 15 + BAR} L${left + wide} ${top + 15}"></path>
                    <path class="mark" d="M${middle} ${top + 15} l-4.5 -8 h9 z"></path>`
                  : nothing
              }
            </g>`;
          })}`;
    })}
  </svg>`;
}

/** The stretch of a number of weeks from a moment on, or the whole roster, in whole local days. */
export function spanOf(
  { turns, zone }: PeopleAnswer,
  weeks: number,
  page: number,
): { readonly span: Interval; readonly pages: number } {
  const first = Math.min(...turns.map((turn) => turn.start));
  const last = Math.max(...turns.map((turn) => turn.end));
  const start = startOfLocalDay(first, zone);
  const all = Math.max(1, Math.ceil((last - start) / (7 * DAY)));
  const each = weeks === 0 ? all : Math.min(weeks, all);
  const pages = Math.ceil(all / each);
  const at = Math.min(Math.max(0, page), pages - 1);
  return {
    pages,
    span: {
      start: startOfLocalDay(start, zone, at * each * 7),
      end: startOfLocalDay(start, zone, (at + 1) * each * 7),
    },
  };
}

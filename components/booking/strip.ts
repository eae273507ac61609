import { html, nothing, svg, type TemplateResult } from 'lit';
import { type Instant } from '../../src/calendar/index.js';
import type { Milestone } from '../../src/engine/index.js';
import { countText, dayText, dateText } from '../shared/format.js';
import { comingWeeks, stripMarks, WEEKS } from './coming-weeks.js';
import { stateShape } from './state-mark.js';
import type { BookingStrings } from './strings.js';

const LEFT = 12;
const RIGHT = 16;
const ROW = 18;
const HEAD = 22;

/** What is due in the coming weeks along time; its table is the list below it. */
export function weekStrip(
  milestones: readonly Milestone[],
  now: Instant,
  zone: string,
  width: number,
  strings: BookingStrings,
): TemplateResult {
  const stretch = comingWeeks(now, zone);
  const x = (at: Instant): number =>
    LEFT +
    Math.round(((at - stretch.from) / (stretch.to - stretch.from)) * (width - LEFT - RIGHT) * 10) /
      10;
  const marks = stripMarks(milestones, stretch, x, 15);
  const rows = Math.max(1, ...marks.map((mark) => mark.row + 1));
  const foot = HEAD + rows * ROW + 4;
  const every = Math.max(1, Math.ceil((66 * WEEKS) / Math.max(1, width - LEFT - RIGHT)));
  const late = milestones.filter((milestone) => milestone.state === 'late').length;
  const label = strings.stripTold(
    countText(marks.length, 'milestone'),
    countText(late, 'milestone'),
  );
  return html`<svg
      class="strip"
      role="img"
      width=${width}
      height=${foot + 4}
      aria-label="${strings.strip(WEEKS)}. ${label}"
    >
      ${stretch.weeks.map((week, index) => {
        const named = (index + 1) % every === 0;
        return svg`<line class=${named ? 'week named' : 'week'} x1=${x(week)} x2=${x(week)} y1=${named ? 4 : HEAD - 4} y2=${foot}></line>
          ${named ? svg`<text class="soft" x=${x(week) + 4} y="13">${dateText(week, zone)}</text>` : nothing}`;
      })}
      <line class="now" x1=${LEFT} x2=${LEFT} y1="0" y2=${foot}></line>
      <text class="now-word" x=${LEFT + 4} y="13">${strings.now}</text>
      <line class="base" x1=${LEFT} x2=${width - RIGHT} y1=${foot} y2=${foot}></line>
      ${marks.map(
        (
          mark,
        ) => svg`<g class="due-mark" transform="translate(${mark.x} ${HEAD + mark.row * ROW + ROW / 2})">
          <title>${mark.milestone.window}: ${mark.milestone.milestone}, ${dayText(mark.milestone.due, mark.milestone.zone)}</title>
          ${stateShape(mark.milestone.state)}
        </g>`,
      )}
    </svg>
    ${marks.length === 0 ? html`<p class="quiet">${strings.stripEmpty}</p>` : nothing}`;
}

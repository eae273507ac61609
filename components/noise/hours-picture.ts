import { html, nothing, svg, type TemplateResult } from 'lit';
import type { LoudStretch, NoiseOfActivity } from '../../src/engine/index.js';
import { weekdays, type Weekday } from '../../src/model/index.js';
import type { NoiseStrings } from './strings.js';
import { weekdayText } from '../shared/format.js';

const HEAD = 18;
const ROW = 34;
const BAR = 16;
const WHISKER = 1e-9;

export const isOver = (item: Pick<LoudStretch, 'overDb'>): boolean => (item.overDb ?? 0) > WHISKER;

const clock = (minutes: number): string => String(minutes / 60).padStart(2, '0');

/** The day's hours of each activity: open where it may be loud, barred and struck through where it may not. No alarm: these are hours, not work in them. */
export function hoursPicture(
  activities: readonly NoiseOfActivity[],
  day: Weekday,
  width: number,
  words: NoiseStrings,
): TemplateResult {
  const x = (minute: number): number => Math.round((minute / 1440) * (width - 2) * 10) / 10 + 1;
  const height = HEAD + activities.length * ROW + 4;
  const step = width < 500 ? 6 : 3;
  const hours = Array.from({ length: 24 / step + 1 }, (_, i) => i * step * 60);
  const over = activities.filter((activity) => activity.week.some(isOver)).length;
  return html`<svg
    role="img"
    width=${width}
    height=${height}
    aria-label="${words.picture}, ${weekdayText(1 + weekdays.indexOf(day))}. ${words.told(over, activities.length)}"
  >
    ${hours.map(
      (minute, index) =>
        svg`<line class="hair" x1=${x(minute)} x2=${x(minute)} y1=${HEAD - 4} y2=${height}></line>
        <text class="soft" text-anchor=${index === 0 ? 'start' : index === hours.length - 1 ? 'end' : 'middle'} x=${x(minute)} y="11">${clock(minute)}</text>`,
    )}
    ${activities.map((activity, row) => {
      const top = HEAD + row * ROW;
      return svg`<text x="4" y=${top + 11}>${`${activity.activity} ${activity.title}`.slice(0, Math.floor(width / 7))}</text>
      ${activity.week
        .filter((part) => part.day === day)
        .map((part) => {
          const left = x(part.from);
          const wide = x(part.to) - left;
          const bad = isOver(part);
          const open = part.period !== null && part.levelDb !== null;
          const word = bad
            ? words.mayNot
            : open
              ? words.may
              : part.period === null
                ? words.noLimit
                : words.unknown;
          return svg`<g>
            <title>${activity.activity}, ${words.fromTo(clock(part.from).slice(0, 5), clock(part.to))}: ${word}</title>
            <rect class=${bad ? 'barred' : open ? 'open' : 'not-known'} x=${left} y=${top + 15} width=${Math.max(1, wide - 1)} height=${BAR}></rect>
            ${bad ? svg`<path class="slash plain" d="M${left} ${top + 15 + BAR} L${left + wide - 1} ${top + 15}"></path>` : nothing}
            ${wide > 76 ? svg`<text class="${bad ? 'on-barred' : open ? 'on-open' : 'soft'}" x=${left + 5} y=${top + 15 + 12}>${word}</text>` : nothing}
          </g>`;
        })}`;
    })}
  </svg>`;
}

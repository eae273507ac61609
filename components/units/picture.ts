import { html, nothing, svg, type TemplateResult } from 'lit';
import { DAY, startOfLocalDay, type Instant } from '../../src/calendar/index.js';
import type { UnitWork } from '../../src/model/index.js';
import { countText, dayText } from '../shared/format.js';
import type { UnitsStrings } from './strings.js';
import { unitLine, type UnitDeadline, type Visit } from './visits.js';

const TOP = 34;
const HEIGHT = 250;
const FOOT = 22;
const LEFT = 40;
const RIGHT = 14;
/** Room for `Sat 27 Mar` with air. */
const DATE = 92;
/** Room for the id of a window, or for a number of units. */
const NAME = 40;

const round = (n: number): number => Math.round(n * 100) / 100;

/** Units in place against time, with the total as a level line and the key date as an upright one. */
export function unitsPicture(
  work: UnitWork,
  visits: readonly Visit[],
  deadline: UnitDeadline | null,
  floatWords: string,
  zone: string,
  width: number,
  words: UnitsStrings,
): TemplateResult {
  const line = unitLine(work, visits);
  const moments = [...line.map((one) => one.at), ...(deadline ? [deadline.due] : [])];
  if (moments.length === 0) return html``;
  const from = startOfLocalDay(Math.min(...moments), zone, 0);
  const to = startOfLocalDay(Math.max(...moments), zone, 1);
  const foot = HEIGHT - FOOT;
  const right = Math.max(LEFT + 1, width - RIGHT);
  const most = Math.max(1, work.units, ...line.map((one) => one.units));
  const x = (at: Instant): number => round(LEFT + ((at - from) / (to - from)) * (right - LEFT));
  const y = (units: number): number => round(foot - (units / most) * (foot - TOP));
  const path = [{ at: from, units: work.done }, ...line]
    .map((one, index) => `${index === 0 ? 'M' : 'L'}${x(one.at)} ${y(one.units)}`)
    .join('');
  const named = apart(visits.map((one) => x(one.from)));
  const due = deadline ? x(deadline.due) : 0;
  const dueRight = due < (LEFT + right) / 2;
  return html`<svg
    class="chart"
    width=${width}
    height=${HEIGHT}
    role="img"
    aria-label=${`${words.picture}. ${told(work, visits, words)}`}
  >
    ${unitTicks(most).map(
      (units) =>
        svg`<line class="grid" x1=${LEFT} x2=${right} y1=${y(units)} y2=${y(units)}></line>
        <text class="tick" x=${LEFT - 6} y=${y(units) + 4} text-anchor="end">${units}</text>`,
    )}
    ${dayTicks(from, to, zone, (right - LEFT) / DATE).map(
      (at) =>
        svg`<line class="grid" x1=${x(at)} x2=${x(at)} y1=${foot} y2=${foot + 4}></line>
        <text class="tick" x=${x(at)} y=${HEIGHT - 4} text-anchor="middle">${dayText(at, zone)}</text>`,
    )}
    ${visits.map(
      (one) =>
        svg`<rect class="visit" x=${x(one.from)} y=${TOP} height=${foot - TOP} width=${Math.max(2, x(one.to) - x(one.from))}><title>${one.window ?? words.outside}: ${countText(one.units, words.unit, words.units)}</title></rect>`,
    )}
    <line class="target" x1=${LEFT} x2=${right} y1=${y(work.units)} y2=${y(work.units)}></line>
    <text class="target-text halo" x=${LEFT + 4} y=${y(work.units) - 5}>
      ${words.total(countText(work.units, words.unit, words.units))}
    </text>
    <path class="line" d=${`${path}H${right}`}></path>
    ${visits.map((one, index) => {
      const near = { x: x(one.to), y: y(one.cumulative) };
      return svg`<circle class="dot" cx=${near.x} cy=${near.y} r="3"></circle>
        ${named.has(index) ? svg`<text class="name halo" x=${x(one.from)} y=${foot - 4} text-anchor=${near.x > right - NAME ? 'end' : 'start'} dx=${near.x > right - NAME ? -3 : 4}>${one.window ?? words.outside}</text>` : nothing}
        ${named.has(index) && one.cumulative < work.units ? svg`<text class="sum halo" x=${near.x - 6} y=${near.y - 5} text-anchor="end">${one.cumulative}</text>` : nothing}`;
    })}
    ${
      deadline
        ? svg`<line class="due" x1=${due} x2=${due} y1="4" y2=${foot}></line>
        <text class="due-text halo" x=${due + (dueRight ? 5 : -5)} y="12" text-anchor=${dueRight ? 'start' : 'end'}>${words.keyDateMark}, ${floatWords}</text>`
        : nothing
    }
  </svg>`;
}

/** The picture in one sentence. */
function told(work: UnitWork, visits: readonly Visit[], words: UnitsStrings): string {
  const placed = visits.at(-1)?.cumulative ?? work.done;
  return words.ofTotal(String(placed), countText(work.units, words.unit, words.units));
}

/** Whole, even numbers of units from 0, at most five steps. */
export function unitTicks(most: number): number[] {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, most / 5)));
  const step = [1, 2, 5, 10].map((k) => k * power).find((one) => most / one <= 5)!;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
}

/** Local midnights, so far apart that at most `count` fit; the last half step is left free for its words. */
function dayTicks(from: Instant, to: Instant, zone: string, count: number): Instant[] {
  const days = Math.max(1, Math.round((to - from) / DAY));
  const step = Math.max(1, Math.ceil(days / Math.max(1, count)));
  const ticks: Instant[] = [];
  for (let day = 0; day <= days - step / 2; day += step)
    ticks.push(startOfLocalDay(from + DAY / 2, zone, day));
  return ticks;
}

/** Places, by index, that stand far enough from the last one named to be named as well. */
function apart(xs: readonly number[]): Set<number> {
  const named = new Set<number>();
  let last = -Infinity;
  for (const [index, x] of xs.entries()) {
    if (x - last < NAME) continue;
    named.add(index);
    last = x;
  }
  return named;
}

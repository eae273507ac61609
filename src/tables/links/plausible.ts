// What a slip of the hand makes of a window or a date: told, or refused where no railway has such a thing.
import { MINUTE, localTimeOf, type Interval } from '../../calendar/index.js';
import type { AccessWindow, Problem } from '../../model/index.js';
import type { Severity } from '../text/place.js';
import { problemOf } from '../parse/parsed.js';

const day = 1440 * MINUTE;
/** Common practice, no source: closures of more than a month are booked in parts. */
const longestDays = 31;
const longDays = 10;

/** What is said of a window's length: refused beyond 31 days, told of beyond 10. */
export function lengthFault(
  { start, end }: Interval,
  zone: string,
): { readonly severity: Severity; readonly problem: Problem } | undefined {
  const days = Math.round((end - start) / day);
  if (end - start <= longDays * day) return undefined;
  const [from, to] = [localTimeOf(start, zone), localTimeOf(end, zone)];
  const maybe = from.year === to.year ? undefined : from.year;
  if (end - start > longestDays * day)
    return {
      severity: 'error',
      problem: problemOf('window-too-long', { days, longestDays, maybe }),
    };
  return {
    severity: 'warning',
    problem: problemOf('window-long', { days }),
  };
}

const year = 365.25 * day;
/** Beyond this many years from the middle window, a window is of another plan. */
const spanYears = 10;
const fewest = 4;

export interface OddWindow {
  readonly window: AccessWindow;
  readonly severity: Severity;
  readonly problem: Problem;
}

/**
 * Windows that stand apart from the others of their plan: refused ten years and more from the middle one; told of where
 * they are more than half a year from any other and would stand among them in another year. O(n log n).
 */
export function oddWindows(windows: readonly AccessWindow[]): readonly OddWindow[] {
  if (windows.length < fewest) return [];
  const starts = windows.map((window) => window.start).sort((a, b) => a - b);
  const middle = starts[starts.length >> 1]!;
  const found: OddWindow[] = [];
  const place = new Map(starts.map((start, at) => [start, at]));
  for (const window of windows) {
    const { start } = window;
    if (Math.abs(start - middle) > spanYears * year) {
      found.push({
        window,
        severity: 'error',
        problem: problemOf('window-far-off', {
          years: Math.round(Math.abs(start - middle) / year),
          middle: localYear(middle, window.zone),
        }),
      });
      continue;
    }
    const at = place.get(start)!;
    const gap = Math.min(
      start - (starts[at - 1] ?? -Infinity),
      (starts[at + 1] ?? Infinity) - start,
    );
    const others = at === 0 ? starts.slice(1) : at === starts.length - 1 ? starts.slice(0, -1) : [];
    if (gap <= year / 2 || others.length === 0) continue;
    const shift = [-1, 1].find(
      (years) =>
        start + years * year >= others[0]! - 31 * day &&
        start + years * year <= others.at(-1)! + 31 * day,
    );
    if (shift === undefined) continue;
    const written = localYear(start, window.zone);
    found.push({
      window,
      severity: 'warning',
      problem: problemOf('year-stands-out', { written, maybe: written + shift }),
    });
  }
  return found;
}

const localYear = (at: number, zone: string): number => localTimeOf(at, zone).year;

// The unit that a heading gives to the bare numbers below it.
import { wordsOf } from './heading-words.js';

const units: ReadonlyMap<string, string> = new Map(
  Object.entries({
    minutes: 'min mins minute minutes minuten',
    hours: 'h hr hrs hour hours std stunden heures',
    days: 'days tage jours',
    m: 'm metres meter',
    km: 'km',
    mi: 'mi miles',
    ch: 'ch chains',
    yd: 'yd yards',
  }).flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit] as const)),
);
const lengths = new Set(['m', 'km', 'mi', 'ch', 'yd']);
const durations = new Set(['minutes', 'hours', 'days']);

/** The unit a heading names, as `hours` of `duration (hrs)` and `hours per unit`, or `km` of `from km`. */
export function unitOfHeading(heading: string): string | undefined {
  const words = wordsOf(heading);
  const last = units.get(words.at(-1) ?? '');
  if (last !== undefined) return last;
  // Inside a heading a single letter is rather a word of its own, and a length no unit of a duration.
  const inside = words.findLast((word) => word.length > 1 && durations.has(units.get(word) ?? ''));
  return inside === undefined ? undefined : units.get(inside);
}

/** The words of a heading without the unit they end with. */
export const withoutUnit = (words: readonly string[]): readonly string[] =>
  words.length > 1 && units.has(words.at(-1)!) ? words.slice(0, -1) : words;

/** Whether words end with a unit of length. */
export const endInLength = (words: readonly string[]): boolean =>
  lengths.has(units.get(words.at(-1) ?? '') ?? '');

import type { OptionWish } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { addMinutes } from '../../src/calendar/index.js';
import { momentsIn } from '../handback/decisions/window-times.js';
import type { OptionsStrings } from './strings.js';
import { numberText } from '../shared/format.js';

/** The fields of the form for an own option, as typed. */
export interface WishTexts {
  readonly name: string;
  readonly longer: string;
  readonly resource: string;
  readonly count: string;
  readonly activity: string;
  readonly units: string;
  readonly day: string;
  readonly clock: string;
}

export type ReadWish =
  | { readonly name: string; readonly wish: OptionWish }
  | { readonly field: keyof WishTexts; readonly problem: string };

const wholeOf = (text: string, most: number): number | undefined =>
  /^\d{1,5}$/.test(text) && Number(text) >= 1 && Number(text) <= most ? Number(text) : undefined;

/** Most minutes that a window can be extended by. */
export const MOST_LONGER = 2880;

/**
 * Reads the form, or returns the first field that cannot be read, and why. An empty field changes nothing.
 *
 * @param planned Units planned in the window by activity; 1 for whole work.
 */
export function readWish(
  texts: WishTexts,
  window: AccessWindow,
  planned: ReadonlyMap<string, number>,
  words: OptionsStrings,
): ReadWish {
  const { name, longer, resource, count, activity, units, day, clock } = texts;
  const bad = (field: keyof WishTexts, problem: string): ReadWish => ({ field, problem });
  if (name === '') return bad('name', words.giveName);
  const longerMinutes = longer === '' ? undefined : wholeOf(longer, MOST_LONGER);
  if (longer !== '' && longerMinutes === undefined)
    return bad('longer', words.wholeTo(numberText(MOST_LONGER)));
  const more = resource === '' ? undefined : wholeOf(count, 99);
  if (resource !== '' && more === undefined) return bad('count', words.wholeTo('99'));
  const there = planned.get(activity) ?? 0;
  const left = activity === '' ? undefined : wholeOf(units, there);
  if (activity !== '' && left === undefined) return bad('units', words.wholeTo(String(there)));
  if (activity !== '' && clock !== '') return bad('clock', words.notBoth);
  let cutOffAt: number | undefined;
  if (clock !== '') {
    const { start } = window;
    const stretch = { start, end: addMinutes(window.end, longerMinutes ?? 0) };
    const found = momentsIn(clock, stretch, window.zone, day === '' ? undefined : Number(day));
    if (found === 'no-time') return bad('clock', words.giveClock);
    if (found === 'skipped') return bad('clock', words.noSuchClock);
    if (found === 'outside') return bad('clock', words.clockOutside);
    // Of two readings, the earlier: it leaves less time.
    cutOffAt = found[0];
  }
  const wish: OptionWish = {
    ...(longerMinutes !== undefined && { longerMinutes }),
    ...(more !== undefined && { extra: { resource, count: more } }),
    ...(left !== undefined && { leaveOut: [{ activity, units: left }] }),
    ...(cutOffAt !== undefined && { cutOffAt }),
  };
  return Object.keys(wish).length === 0 ? bad('longer', words.changesNothing) : { name, wish };
}

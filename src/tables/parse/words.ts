import type { Activity, Occupies, WindowStatus } from '../../model/index.js';
import { plain, refuse, type Parsed } from './parsed.js';

function wordParser<T>(
  words: ReadonlyMap<string, T>,
  problem: 'not-yes-or-no' | 'place-not-known' | 'occupies-not-known' | 'status-not-known',
): (text: string) => Parsed<T> {
  return (text) => {
    const value = words.get(plain(text).toLowerCase());
    return value === undefined ? refuse(problem, { text }) : { value };
  };
}

/** Reads `yes`, `no` and the other usual marks. A blank cell is `no`, which the caller sees to. */
export const parseFlag = wordParser<boolean>(
  new Map([
    ...['yes', 'y', 'true', '1', 'x', 'loud', '✓', '✔'].map((word) => [word, true] as const),
    ...['no', 'n', 'false', '0', '-', 'quiet'].map((word) => [word, false] as const),
  ]),
  'not-yes-or-no',
);

export const parsePlace = wordParser<Activity['place']>(
  new Map([
    ['inside', 'inside'],
    ['outside', 'outside'],
  ]),
  'place-not-known',
);

export const parseOccupies = wordParser<Occupies>(
  new Map<string, Occupies>([
    ['alone', 'alone'],
    ['exclusive', 'alone'],
    ['shared', 'shared'],
  ]),
  'occupies-not-known',
);

export const parseStatus = wordParser<WindowStatus>(
  new Map<string, WindowStatus>([
    ['requested', 'requested'],
    ['proposed', 'requested'],
    ['offered', 'offered'],
    ['confirmed', 'confirmed'],
    ['booked', 'confirmed'],
    ['agreed', 'confirmed'],
    ['withdrawn', 'withdrawn'],
    ['cancelled', 'withdrawn'],
    ['canceled', 'withdrawn'],
  ]),
  'status-not-known',
);

import type { Activity, Occupies, WindowStatus } from '../../model/index.js';
import { plain, refuse, type Parsed } from './parsed.js';

function wordParser<T>(
  words: ReadonlyMap<string, T>,
  code: string,
  mend: string,
): (text: string) => Parsed<T> {
  return (text) => {
    const value = words.get(plain(text).toLowerCase());
    return value === undefined ? refuse(code, `"${text}" is not known here.`, mend) : { value };
  };
}

/** Reads `yes`, `no` and the other usual marks. A blank cell is `no`, which the caller sees to. */
export const parseFlag = wordParser<boolean>(
  new Map([
    ...['yes', 'y', 'true', '1', 'x', 'loud', '✓', '✔'].map((word) => [word, true] as const),
    ...['no', 'n', 'false', '0', '-', 'quiet'].map((word) => [word, false] as const),
  ]),
  'not-yes-or-no',
  'Write yes or no.',
);

export const parsePlace = wordParser<Activity['place']>(
  new Map([
    ['inside', 'inside'],
    ['outside', 'outside'],
  ]),
  'place-not-known',
  'Write inside (needs the closure) or outside (does not).',
);

export const parseOccupies = wordParser<Occupies>(
  new Map<string, Occupies>([
    ['alone', 'alone'],
    ['exclusive', 'alone'],
    ['shared', 'shared'],
  ]),
  'occupies-not-known',
  'Write alone (nobody else on its lines and place while it goes on) or shared.',
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
  'Write requested, offered, confirmed or withdrawn.',
);

import type { Extent } from '../model/index.js';
import { parseChainage, type ChainageUnit } from './parse/chainage.js';
import type { Sheet, SheetRow } from './sheet.js';

const chainageUnits: readonly string[] = ['m', 'km', 'mi', 'ch', 'yd'] satisfies ChainageUnit[];

/**
 * The extent of a row, its ends in rising order: written from high to low it is the same stretch. One end alone is
 * an error.
 */
export function readExtent<K extends 'windows' | 'work'>(
  sheet: Sheet<K>,
  row: SheetRow<K>,
): Extent | undefined {
  const end = (field: 'from' | 'to'): number | undefined => {
    const unit = sheet.unitOf(field);
    const bare = unit !== undefined && chainageUnits.includes(unit) ? (unit as ChainageUnit) : 'm';
    return row.read(field, (text) => parseChainage(text, bare));
  };
  const [from, to] = [end('from'), end('to')];
  for (const field of ['from', 'to'] as const) {
    const other = field === 'from' ? 'to' : 'from';
    if (row.text(field) !== '' || row.text(other) === '') continue;
    row.say('error', field, {
      code: 'extent-half-given',
      message: `"${other}" is given and "${field}" is blank.`,
      mend: 'Give both ends, or neither where the extent does not matter.',
    });
  }
  if (from === undefined || to === undefined) return undefined;
  return { from: Math.min(from, to), to: Math.max(from, to) };
}

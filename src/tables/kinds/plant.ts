import { surenesses, type PlantNoise, type Sureness } from '../../model/index.js';
import { parseName } from './identity.js';
import { parseDecimal, parsePercent, parseWhole } from '../parse/number.js';
import { plain, refuse, type Parsed } from '../parse/parsed.js';
import { openSheet } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind, ReadResult } from './windows.js';

export interface PlantResult extends ReadResult {
  readonly plant: readonly PlantNoise[];
}

/** Reads a list of plant with its levels at 10 m. Several rows may serve one resource: they are then at work together. */
export function plantFrom(table: Table, options: ReadOptionsOfKind): PlantResult {
  const sheet = openSheet(table, 'plant', options);
  const plant: PlantNoise[] = [];
  const rowOf = new Map<string, number>();
  for (const row of sheet.rows) {
    const name = row.require('plant', parseName);
    const levelDb = row.require('level', parseLevel);
    const resource = row.read('resource', parseName);
    const count = row.read('count', (text) => parseWhole(text, 1));
    const onTimePercent = row.read('on time', parsePercent);
    const sureness = row.read('sureness', parseSureness) ?? 'weak';
    if (name !== undefined && !rowOf.has(name)) rowOf.set(name, row.index);
    if (row.isBad() || name === undefined || levelDb === undefined) continue;
    plant.push({
      plant: name,
      levelDb,
      ...(resource !== undefined && { resource }),
      ...(count !== undefined && { count }),
      ...(onTimePercent !== undefined && { onTimePercent }),
      source: row.text('source') || 'not said',
      sureness,
    });
  }
  return { plant, faults: sheet.faults, rowOf };
}

function parseLevel(text: string): Parsed<number> {
  const read = parseDecimal(plain(text).replace(/ ?dB(?: ?\(?A\)?)?$/i, ''));
  if ('problem' in read || (read.value > 0 && read.value <= 200)) return read;
  return refuse('level-out-of-range', { text });
}

function parseSureness(text: string): Parsed<Sureness> {
  const value = surenesses.find((sureness) => sureness === plain(text).toLowerCase());
  return value === undefined ? refuse('sureness-not-known', { text, surenesses }) : { value };
}

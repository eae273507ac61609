import type { Spread, UnitWork, WholeWork } from '../../model/index.js';
import { parseDuration, type DurationUnit } from '../parse/duration.js';
import { parseWhole } from '../parse/number.js';
import { once, type Parser, problemOf } from '../parse/parsed.js';
import type { Sheet, SheetRow } from './sheet.js';

type WorkRow = SheetRow<'work'>;
const timeFields = [
  'minutes',
  'minutes low',
  'minutes high',
  'minutes per unit',
  'set up',
  'make safe',
] as const;
type TimeField = (typeof timeFields)[number];

const unitFields = ['done', 'minutes per unit', 'set up', 'make safe'] as const;

type Work = WholeWork | UnitWork;

/** Common practice, no source: little goes on for more than four days without a stop. */
const longMinutes = 4 * 1440;

/** Tells of work that would go on for days in one go, as a slip in its minutes makes it. */
function tellOfLong(row: WorkRow, field: TimeField, minutes: number | undefined): void {
  if (minutes === undefined || minutes <= longMinutes) return;
  row.say('warning', field, problemOf('work-long', { minutes }));
}

/** Reads the work of a row: a whole piece, or repeated units. `undefined`, with faults, when the row does not say. */
export function workReader(sheet: Sheet<'work'>): (row: WorkRow) => Work | undefined {
  const parserOf = (bare: DurationUnit): Parser<number> =>
    once((text) => parseDuration(text, bare));
  const [minutes, hours, days] = [parserOf('minutes'), parserOf('hours'), parserOf('days')];
  const parsers = new Map<TimeField, Parser<number>>();
  for (const field of timeFields) {
    const unit = sheet.unitOf(field);
    parsers.set(field, unit === 'hours' ? hours : unit === 'days' ? days : minutes);
  }
  return (row) => readWork(row, (field) => row.read(field, parsers.get(field)!));
}

function readWork(row: WorkRow, time: ReadTime): Work | undefined {
  const [whole, repeated] = [row.text('minutes') !== '', row.text('units') !== ''];
  if (whole && repeated) {
    row.say('error', 'units', problemOf('minutes-and-units'));
    return undefined;
  }
  if (repeated) return readUnits(row, time);
  if (!whole) {
    row.say('error', 'minutes', problemOf('duration-missing'));
    return undefined;
  }
  return readWhole(row, time);
}

type ReadTime = (field: TimeField) => number | undefined;

function readWhole(row: WorkRow, time: ReadTime): WholeWork | undefined {
  const minutes = time('minutes');
  tellOfLong(row, 'minutes', minutes);
  for (const field of unitFields) {
    const text = row.text(field);
    if (text === '' || text === '0') continue;
    row.say('error', field, problemOf('units-missing', { field }));
  }
  if (minutes === undefined) return undefined;
  const spread = readSpread(row, time, minutes);
  return { kind: 'whole', minutes, ...(spread && { spread }) };
}

function readUnits(row: WorkRow, time: ReadTime): UnitWork | undefined {
  const units = row.read('units', (text) => parseWhole(text, 1));
  const done = row.read('done', (text) => parseWhole(text, 0)) ?? 0;
  if (row.text('minutes per unit') === '') {
    row.say('error', 'minutes per unit', problemOf('minutes-per-unit-missing'));
  }
  const minutesPerUnit = time('minutes per unit');
  tellOfLong(row, 'minutes per unit', minutesPerUnit);
  const setUpMinutes = time('set up') ?? 0;
  const makeSafeMinutes = time('make safe') ?? 0;
  if (units !== undefined && done > units) {
    row.say('error', 'done', problemOf('more-done-than-units', { done, units }));
  }
  if (minutesPerUnit === 0) {
    row.say('error', 'minutes per unit', problemOf('number-too-small/unit'));
  }
  if (units === undefined || minutesPerUnit === undefined) return undefined;
  const spread = readSpread(row, time, minutesPerUnit);
  return {
    kind: 'units',
    units,
    done,
    minutesPerUnit,
    setUpMinutes,
    makeSafeMinutes,
    ...(spread && { spread }),
  };
}

function readSpread(row: WorkRow, time: ReadTime, likely: number): Spread | undefined {
  const [low, high] = [time('minutes low'), time('minutes high')];
  const spreadFields = ['minutes low', 'minutes high'] as const;
  for (const field of low === undefined || high === undefined ? spreadFields : []) {
    const other = field === 'minutes low' ? 'minutes high' : 'minutes low';
    if (row.text(field) !== '' || row.text(other) === '') continue;
    row.say('error', field, problemOf('spread-half-given', { other, field }));
  }
  if (low === undefined || high === undefined) return undefined;
  if (low <= likely && likely <= high) return { low, high };
  row.say(
    'error',
    low > likely ? 'minutes low' : 'minutes high',
    problemOf('spread-out-of-order/work', { low, likely, high }),
  );
  return undefined;
}

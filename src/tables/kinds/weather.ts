import type { Fault, WeatherRow } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { momentParser } from '../parse/moment.js';
import { parseDecimal } from '../parse/number.js';
import { refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { speedParser, temperatureParser } from '../parse/weather.js';
import { parseFlag } from '../parse/words.js';
import { openSheet, type Sheet, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind } from './windows.js';

export interface WeatherResult {
  /** In time order. */
  readonly rows: readonly WeatherRow[];
  readonly faults: readonly Fault[];
}

type Kind = 'forecast' | 'temperatures';

/**
 * Reads a forecast of wind. Speeds given for another height are brought to 10 m: the mean by the power of 0.14 of the
 * height, the gust by the formula it is raised with again (worked out from a crane maker's manual).
 */
export function forecastFrom(table: Table, options: ReadOptionsOfKind): WeatherResult {
  const sheet = openSheet(table, 'forecast', options);
  const wind = speedParser(sheet.headingOf('wind'), 120);
  const gust = speedParser(sheet.headingOf('gust'), 150);
  const warm = temperatureParser(sheet.headingOf('temperature'));
  let raised = false;
  return rowsOf(table, sheet, options, (row) => {
    const windMps = row.read('wind', wind);
    const gustMps = row.read('gust', gust);
    const height = row.read('height', parseHeight) ?? 10;
    if (windMps === undefined && gustMps === undefined && !row.isBad())
      row.say('error', 'wind', problemOf('cell-blank/wind'));
    if (height !== 10 && !raised) {
      raised = true;
      row.say('warning', 'height', problemOf('wind-at-other-height', { height }));
    }
    const power = (height / 10) ** 0.14;
    const temperatureC = row.read('temperature', warm);
    const lightning = row.read('lightning', parseFlag);
    return {
      ...(windMps !== undefined && { windMps: windMps / power }),
      ...(gustMps !== undefined && { gustMps: (gustMps * 1.4) / (power + 0.4) }),
      ...(temperatureC !== undefined && { temperatureC }),
      ...(lightning !== undefined && { lightning }),
    };
  });
}

/** Reads a record or forecast of temperatures. */
export function temperaturesFrom(table: Table, options: ReadOptionsOfKind): WeatherResult {
  const sheet = openSheet(table, 'temperatures', options);
  const warm = temperatureParser(sheet.headingOf('temperature'));
  return rowsOf(table, sheet, options, (row) => {
    const temperatureC = row.require('temperature', warm);
    return temperatureC === undefined ? {} : { temperatureC };
  });
}

/** Every row in time order. A row at the time of another is left out, since one of them must be wrong. */
function rowsOf<K extends Kind>(
  table: Table,
  sheet: Sheet<K>,
  { file, zone, dateOrder }: ReadOptionsOfKind,
  read: (row: SheetRow<K>) => Omit<WeatherRow, 'at'>,
): WeatherResult {
  const order = dateOrderOfSheet(table, sheet, ['time'], file, dateOrder);
  const parseAt = momentParser({
    zone,
    order,
    dateAlone: 'start',
    twice: ['earlier', 'holds-longer'],
  });
  const rows: WeatherRow[] = [];
  const seen = new Map<number, number>();
  for (const row of sheet.rows) {
    const at = row.require('time', parseAt);
    const values = read(row);
    const before = at === undefined ? undefined : seen.get(at);
    if (before !== undefined) row.say('error', 'time', problemOf('time-twice', { before }));
    if (row.isBad() || at === undefined) continue;
    seen.set(at, row.line);
    rows.push({ at, ...values });
  }
  return { rows: rows.sort((a, b) => a.at - b.at), faults: sheet.faults };
}

function parseHeight(text: string): Parsed<number> {
  const read = parseDecimal(text.replace(/(?<!\s)\s*m$/i, ''));
  if ('problem' in read || (read.value > 0 && read.value <= 500)) return read;
  return refuse('height-out-of-range', { text });
}

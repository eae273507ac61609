import { isoText } from '../../calendar/index.js';
import type { Fault, RiskEvent } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { parseName } from './identity.js';
import { parseDuration } from '../parse/duration.js';
import { momentParser } from '../parse/moment.js';
import { parseDecimal } from '../parse/number.js';
import { plain, refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { openSheet, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind } from './windows.js';

export interface RiskEventsResult {
  readonly events: readonly RiskEvent[];
  readonly faults: readonly Fault[];
}

/** Reads what may happen and costs time: a row an event. Names are held to the plan by who asks. */
export function riskEventsFrom(table: Table, options: ReadOptionsOfKind): RiskEventsResult {
  const sheet = openSheet(table, 'events', options);
  const order = dateOrderOfSheet(table, sheet, ['at'], options.file, options.dateOrder);
  const moment = momentParser({
    zone: options.zone,
    order,
    dateAlone: 'start',
    twice: ['earlier', 'stops-sooner'],
  });
  const events = sheet.rows.flatMap((row): RiskEvent[] => {
    const name = row.read('event', parseName);
    const chance = row.read('chance', parseChance);
    const delay = delayOf(row);
    const window = row.read('window', parseName);
    const activity = row.read('activity', parseName);
    const step = row.read('step', parseName);
    const stage = row.read('stage', parseStage);
    const at = row.read('at', moment);
    const source = row.text('source').trim();
    if ([activity, step, at].filter((item) => item !== undefined).length !== 1)
      row.say('error', 'activity', problemOf('event-holds-up'));
    if (name === undefined || chance === undefined || !delay || row.isBad()) return [];
    return [
      {
        name,
        chance,
        delay,
        ...(window !== undefined && { window }),
        ...(activity !== undefined && { activity }),
        ...(step !== undefined && { step }),
        ...(stage !== undefined && { stage }),
        ...(at !== undefined && { at: isoText(at, options.zone) }),
        ...(source !== '' && { source }),
      },
    ];
  });
  return { events, faults: sheet.faults };
}

function delayOf(row: SheetRow<'events'>): RiskEvent['delay'] | undefined {
  const minutes = (text: string): Parsed<number> => parseDuration(text, 'minutes');
  if (plain(row.text('minutes')).toLowerCase() === 'recorded') return 'recorded';
  const likely = row.read('minutes', minutes);
  const low = row.read('minutes low', minutes) ?? likely;
  const high = row.read('minutes high', minutes) ?? likely;
  if (likely === undefined || low === undefined || high === undefined) return undefined;
  if (low <= likely && likely <= high) return { low, likely, high };
  row.say('error', 'minutes', problemOf('spread-out-of-order', { low, likely, high }));
  return undefined;
}

/** A share of 1, or per cent with the sign: `0.1`, `10 %`. A bare number above 1 is refused: it can mean either. */
function parseChance(text: string): Parsed<number> {
  const bare = plain(text);
  const percent = bare.endsWith('%');
  const read = parseDecimal(percent ? bare.slice(0, -1).trim() : bare);
  if ('problem' in read) return read;
  const value = percent ? read.value / 100 : read.value;
  return value >= 0 && value <= 1 ? { value } : refuse('not-a-chance', { text });
}

function parseStage(text: string): Parsed<'lead-in' | 'lead-out'> {
  const bare = text.toLowerCase().replace(/[\s_-]+/g, '-');
  if (bare === 'lead-in' || bare === 'lead-out') return { value: bare };
  return refuse('stage-not-known', { text });
}

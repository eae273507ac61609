import { HOUR, MINUTE, offsetMinutes } from '../../calendar/index.js';
import type { Assignment } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { parseName } from './identity.js';
import { parseNames } from '../parse/list.js';
import { parseDuration } from '../parse/duration.js';
import { type Parsed, problemOf } from '../parse/parsed.js';
import { twiceWarning } from '../parse/local-moment.js';
import { spanOf, type ReadSpan } from '../parse/span.js';
import { parseMoment } from '../parse/written-moment.js';
import { openSheet } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind, ReadResult } from './windows.js';

export interface RosterResult extends ReadResult {
  readonly turns: readonly Assignment[];
}

/**
 * Reads a roster: a turn of duty a row, of a crew or of a person. Where a row names both, limits are held to the
 * person. A turn without a name of its own is called by who works it and its number among theirs: `Gang A 3`.
 */
export function rosterFrom(table: Table, options: ReadOptionsOfKind): RosterResult {
  const { file, zone } = options;
  const sheet = openSheet(table, 'roster', options);
  const order = dateOrderOfSheet(table, sheet, ['start', 'end'], file, options.dateOrder);
  const travelUnit = sheet.unitOf('travel') === 'hours' ? 'hours' : 'minutes';
  const turns: Assignment[] = [];
  const rowOf = new Map<string, number>();
  const seen = new Map<string, number>();
  const counts = new Map<string, number>();
  for (const row of sheet.rows) {
    const person = row.read('person', parseName);
    const crew = person ?? row.require('crew', parseName);
    const number = (counts.get(crew ?? '') ?? 0) + 1;
    counts.set(crew ?? '', number);
    const id = row.read('turn', parseName) ?? `${crew ?? ''} ${number}`;
    const before = seen.get(id);
    if (before !== undefined)
      row.say('error', 'turn', problemOf('name-twice/turn', { id, before }));
    seen.set(id, row.line);
    rowOf.set(id, row.index);
    const start = row.require('start', (text) => parseMoment(text, order));
    const end = row.require('end', (text) => parseMoment(text, order));
    const travel = row.read('travel', (text): Parsed<number> => parseDuration(text, travelUnit));
    const window = row.read('window', parseName);
    const competence = row.read('competence', parseNames);
    const span = start && end ? spanOf(start, end, zone) : undefined;
    if (span && 'problem' in span) row.say('error', span.of, span.problem);
    if (!span || 'problem' in span || row.isBad() || crew === undefined) continue;
    const worked = longerReading(span.value, zone);
    if (worked.startWarning) row.say('warning', 'start', worked.startWarning);
    if (worked.endWarning) row.say('warning', 'end', worked.endWarning);
    turns.push({
      id,
      crew,
      start: worked.start,
      end: worked.end,
      travelMinutes: travel ?? 0,
      ...(window !== undefined && { window }),
      ...(competence !== undefined && competence.length > 0 && { competence }),
    });
  }
  return { turns, faults: sheet.faults, rowOf };
}

const THREE_HOURS = 3 * HOUR;
const why = 'counts-more';

/** Of a time that clocks show twice the reading that makes the turn longer: a limit must not pass for want of an offset. */
function longerReading(span: ReadSpan, zone: string): ReadSpan {
  const { startWarning, endWarning } = span;
  let worked: ReadSpan = span;
  const back = (before: number, after: number): number =>
    Math.max(0, offsetMinutes(before, zone) - offsetMinutes(after, zone)) * MINUTE;
  const startBy = back(span.start - THREE_HOURS, span.start);
  if (startWarning?.code === 'time-happens-twice' && startBy > 0) {
    const start = span.start - startBy;
    const said = twiceWarning([start, span.start], start, zone, why);
    worked = { ...worked, start, startWarning: said };
  }
  const endBy = back(span.end, span.end + THREE_HOURS);
  if (endWarning?.code === 'time-happens-twice' && endBy > 0) {
    const end = span.end + endBy;
    worked = { ...worked, end, endWarning: twiceWarning([span.end, end], end, zone, why) };
  }
  return worked;
}

import { readFileSync } from 'node:fs';
import { DAY, HOUR, MINUTE } from '../../../src/calendar/index.js';
import {
  checkRoster,
  limitSetSchema,
  type Assignment,
  type LimitSet,
} from '../../../src/rules/people/index.js';
import { at, zone } from '../../helpers/clock.js';

export const folder = new URL('../../../sample-csv/limits/', import.meta.url);
export const sample = (name: string): LimitSet =>
  limitSetSchema.parse(JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')));

let serial = 0;
export function turn(start: string, end: string, more: Partial<Assignment> = {}): Assignment {
  serial += 1;
  return { id: `T${serial}`, crew: 'A', start: at(start), end: at(end), travelMinutes: 0, ...more };
}
/** A turn on the n-th day after Monday 4 January 2027. */
export function onDay(
  day: number,
  hour: number,
  minutes: number,
  more: Partial<Assignment> = {},
): Assignment {
  const start = at('2027-01-04 00:00') + day * DAY + hour * HOUR;
  return {
    id: `D${day}-${hour}`,
    crew: 'A',
    start,
    end: start + minutes * MINUTE,
    travelMinutes: 0,
    ...more,
  };
}
export const only = (limit: Record<string, unknown>, set: Record<string, unknown> = {}): LimitSet =>
  limitSetSchema.parse({
    schema: 1,
    name: 'test',
    travel: 'not counted',
    ...set,
    limits: [{ name: 'test', source: 'this test', sureness: 'our own', ...limit }],
  });
export const broken = (roster: Assignment[], set: LimitSet) =>
  checkRoster(roster, set, zone).breaches.map((b) => [b.assignment, b.limit, b.excess]);

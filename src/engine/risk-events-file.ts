import type { Fault, RiskEvent } from '../model/index.js';
import { decodeBytes, readTable, riskEventsFrom, writeCsv, type Cell } from '../tables/index.js';

const columns = [
  ...['event', 'chance', 'minutes', 'minutes low', 'minutes high', 'window'],
  ...['activity', 'step', 'stage', 'at', 'source'],
];

/** Events as CSV, a row each, as `--risk` of the command line reads them. */
export function riskEventsFile(events: readonly RiskEvent[]): string {
  return writeCsv(
    columns,
    events.map((event): Cell[] => [
      event.name,
      event.chance,
      ...(event.delay === 'recorded'
        ? ['recorded', '', '']
        : [event.delay.likely, event.delay.low, event.delay.high]),
      ...[event.window, event.activity, event.step, event.stage, event.at, event.source],
    ]),
  );
}

/** Events that a file brought in: those of now with them, how many are new and which were there already. */
export interface EventsBroughtIn {
  readonly events: RiskEvent[];
  readonly added: number;
  readonly changed: number;
  readonly faults: readonly Fault[];
}

/**
 * The events with those of a CSV file. One of the same name, window and subject takes the place of the one that is there; good
 * rows are taken beside faults.
 */
export function eventsBroughtIn(
  now: readonly RiskEvent[],
  bytes: Uint8Array,
  file: string,
  zone: string,
): EventsBroughtIn {
  const { text } = decodeBytes(bytes);
  const read = riskEventsFrom(readTable(text), { file, zone });
  const events = [...now];
  let changed = 0;
  for (const event of read.events) {
    const at = events.findIndex((each) => sameEvent(each, event));
    if (at < 0) events.push(event);
    else {
      if (JSON.stringify(sorted(events[at]!)) !== JSON.stringify(sorted(event))) changed += 1;
      events[at] = event;
    }
  }
  return { events, added: events.length - now.length, changed, faults: read.faults };
}

const sameEvent = (a: RiskEvent, b: RiskEvent): boolean =>
  a.name === b.name &&
  a.window === b.window &&
  a.activity === b.activity &&
  a.step === b.step &&
  a.stage === b.stage;

const sorted = (item: RiskEvent): object =>
  Object.fromEntries(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1)));

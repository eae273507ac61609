import { describe, expect, it } from 'vitest';
import { eventsBroughtIn, riskEventsFile } from '../../../src/engine/risk-events-file.js';
import type { RiskEvent } from '../../../src/model/index.js';
import { riskEventSchema } from '../../../src/model/rule-set.js';
import { readTable, riskEventsFrom } from '../../../src/tables/index.js';

const read = (text: string) =>
  riskEventsFrom(readTable(text), { file: 'events.csv', zone: 'Europe/London' });

describe('events in a table', () => {
  it('last as recorded overruns did where the length says "recorded", whatever its case', () => {
    const { events, faults } = read(
      'event,chance,minutes,step\nGoes wrong,5 %,Recorded,Line handed back\nLate,0.1, recorded ,Possession granted\n',
    );
    expect(faults).toEqual([]);
    expect(events).toEqual([
      { name: 'Goes wrong', chance: 0.05, delay: 'recorded', step: 'Line handed back' },
      { name: 'Late', chance: 0.1, delay: 'recorded', step: 'Possession granted' },
    ]);
    for (const event of events) expect(riskEventSchema.safeParse(event).success).toBe(true);
  });

  it('are refused, not guessed, where the length is another word or has three words', () => {
    for (const row of ['A,0.1,as recorded,,X', 'A,0.1,recorded?,,X', 'A,0.1,,recorded,X']) {
      const { events, faults } = read(`event,chance,minutes,minutes low,step\n${row}\n`);
      expect(events).toEqual([]);
      expect(faults.map((fault) => [fault.severity, fault.line])).toContainEqual(['error', 2]);
    }
  });

  it('go out and come in again as they were, odd names, offsets and sources too', () => {
    const events: RiskEvent[] = [
      { name: '=Wrong, "badly"', chance: 0.025, delay: 'recorded', step: 'Line handed back' },
      {
        ...{ name: 'Breaks', chance: 0.1, delay: { low: 10, likely: 30, high: 90 } },
        ...{ window: 'W1', activity: 'A10', source: 'Two of twenty nights' },
      },
      {
        ...{ name: 'Storm', chance: 1, delay: { low: 60, likely: 60, high: 60 } },
        at: '2027-10-31T01:30:00+00:00',
      },
      {
        ...{ name: 'Test fails', chance: 0, delay: { low: 0, likely: 5, high: 9 } },
        ...{ step: 'Test', stage: 'lead-out' },
      },
    ];
    const bytes = new TextEncoder().encode(riskEventsFile(events));
    const first = eventsBroughtIn([], bytes, 'events.csv', 'Europe/London');
    expect(first).toEqual({ events, added: 4, changed: 0, faults: [] });
    // Brought in twice nothing is doubled; what is there under the same name and subject is replaced.
    const again = eventsBroughtIn(events, bytes, 'events.csv', 'Europe/London');
    expect(again).toEqual({ events, added: 0, changed: 0, faults: [] });
    const milder = events.map((event) => ({ ...event, chance: 0.5 }));
    const changed = eventsBroughtIn(milder, bytes, 'events.csv', 'Europe/London');
    expect(changed).toEqual({ events, added: 0, changed: 4, faults: [] });
  });
});

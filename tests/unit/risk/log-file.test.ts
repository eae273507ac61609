import ICAL from 'ical.js';
import * as nodeIcal from 'node-ical';
import { messageOf } from '../../helpers/problem-words.js';
import { describe, expect, it } from 'vitest';
import { addMinutes } from '../../../src/calendar/index.js';
import { cutOffCalendar, shiftTable } from '../../../src/engine/index.js';
import {
  handback,
  mergeShiftLogs,
  readShiftLog,
  shiftLogFile,
  shiftState,
  type ShiftEntry,
  type ShiftEvent,
} from '../../../src/risk/index.js';
import { readTable } from '../../../src/tables/index.js';
import { anActivity, aPlan, at, aWindow, placed, whole } from '../../helpers/handback-plan.js';

const entry = (id: string, minute: number, event: ShiftEvent, corrects?: string): ShiftEntry => ({
  id,
  at: at(minute),
  enteredAt: at(minute + 1),
  by: 'J. Marl',
  event,
  ...(corrects !== undefined && { corrects }),
});
const every: readonly ShiftEntry[] = [
  entry('1', 1, { kind: 'granted' }),
  entry('2', 2, { kind: 'step-started', step: 'Test', stage: 'lead-in' }),
  entry('3', 3, { kind: 'step-finished', step: 'Test' }),
  entry('4', 4, { kind: 'activity-started', activity: 'CUT' }),
  entry('5', 5, { kind: 'units-done', activity: 'CUT', units: 3 }),
  entry('6', 6, { kind: 'minutes-left', activity: 'CUT', low: 10, likely: 20, high: 40 }),
  entry('7', 7, { kind: 'decided', point: 'G1', name: 'Begin?', go: false }),
  entry('8', 8, { kind: 'activity-finished', activity: 'CUT' }),
  entry('9', 9, { kind: 'struck-out' }, '8'),
  entry('10', 10, { kind: 'note', text: '=1+1, "said"\nin two lines' }),
  entry('11', 11, { kind: 'handed-back' }),
];

describe('a log as a file', () => {
  it('comes back as it was, every kind of entry', () => {
    const read = readShiftLog(shiftLogFile('W1', every));
    expect(read).toEqual({ window: 'W1', start: null, log: every, faults: [] });
    expect(readShiftLog(shiftLogFile('W1', every, 1000)).start).toBe(1000);
  });

  it('says from which entry on it was changed after it was saved', () => {
    const text = shiftLogFile('W1', every);
    const file = JSON.parse(text) as { log: { by: string }[] };
    file.log[1]!.by = 'somebody else';
    expect(readShiftLog(JSON.stringify(file)).faults.map(messageOf)).toEqual([
      'The file was changed after it was saved, from entry 2 on: its stamps do not agree.',
    ]);
    const shorter = JSON.parse(text) as { log: unknown[] };
    shorter.log.pop();
    expect(readShiftLog(JSON.stringify(shorter)).faults).toHaveLength(1);
  });

  it('keeps the good entries and names each bad one', () => {
    const bad = [
      every[0],
      { ...every[1], at: 'soon' },
      { ...every[2], event: { kind: 'shouted' } },
      { ...every[5], event: { kind: 'minutes-left', activity: 'A', low: 5, likely: 2, high: 9 } },
      every[0],
      every[3],
    ];
    const read = readShiftLog(JSON.stringify({ schema: 1, window: 'W1', log: bad }));
    expect(read.log.map((item) => item.id)).toEqual(['1', '4']);
    expect(read.faults.map((fault) => /^Entry (\d)/.exec(messageOf(fault))?.[1])).toEqual([
      '2',
      '3',
      '4',
      '5',
    ]);
  });

  it.each(['', 'no json', '[]', '{"schema":2,"window":"W1","log":[]}', '{"schema":1}', 'null'])(
    'refuses %j and says so',
    (text) => {
      const read = readShiftLog(text);
      expect(read.log).toEqual([]);
      expect(read.faults).toHaveLength(1);
    },
  );
});

describe('two logs of one shift', () => {
  it('become one that holds each entry once, whichever comes first', () => {
    const [one, other] = [every.slice(0, 7), [every[0]!, ...every.slice(5)]];
    const merged = mergeShiftLogs(one, other);
    expect(merged.log).toEqual(every);
    expect(merged.added).toEqual(['8', '9', '10', '11']);
    expect(mergeShiftLogs(other, one).log).toEqual(every);
    expect(mergeShiftLogs(every, every)).toEqual({ log: every, added: [], differing: [] });
  });

  it('keep the own entry where the same id says another thing, and say so', () => {
    const other = [{ ...every[0]!, at: at(30) }];
    const { log, differing } = mergeShiftLogs(every, other);
    expect(log).toEqual(every);
    expect(differing).toEqual(['1']);
  });

  it('count the last written of two corrections of one entry', () => {
    const first = entry('a', 10, { kind: 'activity-started', activity: 'CUT' });
    const mine = { ...first, id: 'b', at: at(15), enteredAt: at(40), corrects: 'a' };
    const again = { ...first, id: 'd', at: at(16), enteredAt: at(45), corrects: 'b' };
    const theirs = { ...first, id: 'c', at: at(20), enteredAt: at(50), corrects: 'a' };
    const { log } = mergeShiftLogs([first, mine, again], [first, theirs]);
    const { standing, actuals } = shiftState(log);
    expect(actuals).toEqual([{ activity: 'CUT', startedAt: at(20) }]);
    expect(standing[0]!.replaced.map((item) => item.id)).toEqual(['a', 'b', 'd']);
  });
});

describe('a log as a table', () => {
  it('has a line an entry, says which count, and runs as no formula', () => {
    const text = shiftTable(every, 'Europe/London');
    const table = readTable(text);
    expect(table.rows).toHaveLength(every.length);
    const column = (name: string): string[] =>
      table.rows.map((row) => row.cells[table.columns.indexOf(name)]!);
    expect(column('counts')).toEqual([...Array<string>(7).fill('yes'), 'no', 'no', 'yes', 'yes']);
    expect(column('happened')[0]).toBe('2026-02-14T23:01:00+00:00');
    expect(column('units done')[4]).toBe('3');
    expect(text).not.toContain('"=1');
    expect(column('text')[9]).toContain('"said"\nin two lines');
  });
});

describe('the calendar of cut-offs', () => {
  const cut = anActivity('CUT', whole(120));
  const result = handback(aPlan([cut]), aWindow(), [placed('CUT', 30, 150)], {
    seed: 1,
    runs: 100,
    commitments: [{ activity: 'CUT', irreversible: true, reinstatementMinutes: 60 }],
    goPoints: [{ id: 'G1', window: 'W1', name: 'Begin?', holder: 'Site manager', before: 'CUT' }],
  });
  const text = cutOffCalendar([result], [aWindow()], at(-60));
  const expected = [
    ...result.cutOffs.map((cutOff) => cutOff.latestStart),
    result.decisions[0]!.pointOfNoReturn!,
    result.decisions[0]!.latestAbort!,
    result.goPoints[0]!.at,
    result.bookedEnd,
  ].sort((a, b) => a - b);

  it('is read by ical.js with every moment right', () => {
    const calendar = new ICAL.Component(ICAL.parse(text) as unknown[] as never);
    const starts = calendar
      .getAllSubcomponents('vevent')
      .map((subcomponent) => new ICAL.Event(subcomponent).startDate.toJSDate().getTime());
    expect(starts.sort((a, b) => a - b)).toEqual(expected);
  });

  it('is read by node-ical the same', () => {
    const events = Object.values(nodeIcal.sync.parseICS(text)).filter(
      (item) => item?.type === 'VEVENT',
    );
    const starts = events.map((event) => (event as { start: Date }).start.getTime());
    expect(starts.sort((a, b) => a - b)).toEqual(expected);
  });

  it('leaves out the cut-offs of what has begun, and moves an entry rather than adding one', () => {
    const live = handback(aPlan([cut]), aWindow(), [placed('CUT', 30, 150)], {
      seed: 1,
      runs: 100,
      at: at(60),
      actuals: [{ activity: 'CUT', startedAt: at(40) }],
      commitments: [{ activity: 'CUT', irreversible: true }],
    });
    const later = cutOffCalendar([live], [aWindow()], at(60));
    expect(later).not.toContain('CUT must have started');
    expect(later).not.toContain('point of no return');
    const uids = (file: string): string[] => file.match(/^UID:.*$/gm)!;
    expect(uids(later).every((uid) => uids(text).includes(uid))).toBe(true);
    expect(addMinutes(live.bookedEnd, 0)).toBe(result.bookedEnd);
  });
});

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultText } from '../../../src/engine/english/problems.js';
import { noRules, type Activity, type PlanDocument } from '../../../src/model/index.js';
import {
  planFrom,
  planFromDocument,
  readTable,
  writeCsv,
  type PlanResult,
} from '../../../src/tables/index.js';
import { cyclesOf } from '../../../src/tables/links/cycle.js';
import { messageOf } from '../../helpers/problem-words.js';

const windows =
  'window,start,end,status\nW1,2027-03-10 23:30,05:30,\nW2,2027-03-17 23:30,05:30,withdrawn\nW3,soon,05:30,\n';
const plan = (work: string, resources?: string): PlanResult =>
  planFrom({
    windows: { file: 'windows.csv', content: windows.replace('W3,soon,05:30,\n', '') },
    work: { file: 'work.csv', content: work },
    ...(resources !== undefined && { resources: { file: 'resources.csv', content: resources } }),
  });
const told = ({ faults }: PlanResult): unknown[] =>
  faults.map(({ code, severity, line, column, value }) => [code, severity, line, column, value]);
const ids = (result: PlanResult): string[] => result.plan.activities.map((activity) => activity.id);

describe('the tables of a plan, checked against each other', () => {
  it('leave out what waits for an unknown activity, and in turn what waits for that', () => {
    const result = plan(
      'activity,minutes,after\nA,1,\nB,1,A; X\nC,1,B\nD,1,start of C + 5\nE,1,A\n',
    );
    expect(told(result)).toEqual([
      ['predecessor-not-known', 'error', 3, 'after', 'A; X'],
      ['predecessor-not-used', 'error', 4, 'after', 'B'],
      ['predecessor-not-used', 'error', 5, 'after', 'start of C + 5'],
    ]);
    expect(ids(result)).toEqual(['A', 'E']);
  });

  it('leave out what waits for an activity whose own row has a fault, and say which', () => {
    const result = plan('activity,minutes,follows\nA,long,\nB,1,A\n');
    expect(told(result)).toEqual([
      ['duration-not-read', 'error', 2, 'minutes', 'long'],
      ['predecessor-not-used', 'error', 3, 'follows', 'A'],
    ]);
    expect(messageOf(result.faults[1]!)).toContain('"A"');
  });

  it('name a circle of waiting in order, once', () => {
    const result = plan('activity,minutes,after\nA,1,C\nB,1,A\nC,1,B + 2 h\nD,1,\n');
    expect(told(result)).toEqual([['predecessors-in-a-circle', 'error', 2, 'after', 'C']]);
    expect(messageOf(result.faults[0]!)).toContain('A after C after B after A');
    expect(ids(result)).toEqual(['D']);
  });

  it('suggest a name that differs in case or spaces only', () => {
    expect(messageOf(plan('activity,minutes,after\nA 10,1,\nB,1,a10\n').faults[0]!)).toContain(
      '"A 10"',
    );
  });

  it('refuse a fixed window that is not there, and warn of one that is withdrawn', () => {
    const result = plan('activity,minutes,window\nA,1,W1\nB,1,W9\nC,1,W2\n');
    expect(told(result)).toEqual([
      ['window-not-known', 'error', 3, 'window', 'W9'],
      ['window-withdrawn', 'warning', 4, 'window', 'W2'],
    ]);
    expect(ids(result)).toEqual(['A', 'C']);
  });

  it('tell a window with a faulty row from one that is not there', () => {
    const result = planFrom({
      windows: { file: 'windows.csv', content: windows },
      work: { file: 'work.csv', content: 'activity,minutes,window\nA,1,W3\n' },
    });
    expect(told(result).at(-1)).toEqual(['window-not-used', 'error', 2, 'window', 'W3']);
  });

  it('warn of a resource that is not listed only where resources are given, and never of too little of it', () => {
    const work = 'activity,minutes,resources\nA,1,crane:5\nB,1,gang:9\n';
    expect(told(plan(work))).toEqual([]);
    const result = plan(work, 'resource,capacity\ngang,1\n');
    expect(told(result)).toEqual([['resource-not-known', 'warning', 2, 'resources', 'crane:5']]);
    expect(ids(result)).toEqual(['A', 'B']);
  });

  it('warn of a train after a window that is not there', () => {
    const result = planFrom({
      windows: { file: 'windows.csv', content: windows },
      trains: {
        file: 'trains.csv',
        content: 'train,passes at,window\n1A,2027-03-11 05:42,W1\n1B,2027-03-11 05:50,W9\n',
      },
    });
    expect(told(result).slice(1)).toEqual([['window-not-known', 'warning', 3, 'window', 'W9']]);
    expect(result.trains).toHaveLength(2);
  });

  it('are read in the zone given, else that of the rules, else London', () => {
    const rules = { file: 'rules.json', content: '{"schema":1,"name":"x","zone":"Europe/Paris"}' };
    const source = {
      file: 'windows.csv',
      content: 'window,start,end\nW1,2027-03-10 23:30,05:30\n',
    };
    expect(planFrom({ windows: source }).plan.zone).toBe('Europe/London');
    expect(planFrom({ windows: source, rules }).plan.windows[0]!.zone).toBe('Europe/Paris');
    expect(planFrom({ windows: source, rules, zone: 'UTC' }).plan.zone).toBe('UTC');
    expect(() => planFrom({ windows: source, zone: 'Nowhere/Else' })).toThrow(RangeError);
  });

  it('read the same from a plan document', () => {
    const text = 'activity,minutes,after\nA,1,\nB,1,A; X\n';
    const table = (file: string, content: string) => {
      const { columns, rows } = readTable(content);
      return { file, columns: [...columns], rows: rows.map(({ cells }) => [...cells]) };
    };
    const document: PlanDocument = {
      schema: 1,
      name: 'test',
      zone: 'Europe/London',
      rules: noRules,
      tables: {
        windows: table('windows.csv', windows),
        work: table('work.csv', text),
        resources: { file: '', columns: [], rows: [] },
        trains: { file: '', columns: [], rows: [] },
      },
    };
    const source = (file: string, content: string) => ({ file, content });
    // The texts of the files come along only where they were read from files.
    const { tables: _texts, ...read } = planFrom({
      windows: source('windows.csv', windows),
      work: source('work.csv', text),
    });
    expect(planFromDocument(document)).toEqual(read);
  });
});

describe('the sample plan', () => {
  const sample = (file: string) => ({
    file,
    content: readFileSync(new URL(`../../../sample-csv/${file}`, import.meta.url)),
  });
  const result = planFrom({
    windows: sample('windows.csv'),
    work: sample('work.csv'),
    resources: sample('resources.csv'),
    trains: sample('trains.csv'),
  });

  it('is read without a fault', () => {
    expect(result.faults.map((fault) => faultText(fault))).toEqual([]);
    expect(result.plan.windows.length).toBeGreaterThanOrEqual(25);
    expect(result.plan.activities.length).toBeGreaterThanOrEqual(58);
    expect(new Set(result.plan.activities.map((activity) => activity.package)).size).toBe(13);
  });

  it('has the lengths its clock-change nights and blockades should have', () => {
    const minutes = new Map(
      result.plan.windows.map((window) => [window.id, (window.end - window.start) / 60_000]),
    );
    // 22:50 to 09:00 less the hour clocks go forward over; 22:50 to 08:30 with the hour they repeat.
    expect([
      minutes.get('S02'),
      minutes.get('S07'),
      minutes.get('B27'),
      minutes.get('B52'),
    ]).toEqual([550, 640, 1620, 3120]);
  });

  it('gives back every cell when written and read again', () => {
    for (const file of ['windows.csv', 'work.csv', 'resources.csv', 'trains.csv']) {
      const table = readTable(sample(file).content.toString());
      const again = readTable(
        writeCsv(
          table.columns,
          table.rows.map((row) => row.cells),
        ),
      );
      expect(again.rows.map((row) => row.cells)).toEqual(table.rows.map((row) => row.cells));
    }
  });
});

describe('circles of waiting', () => {
  const activity = (id: string, after: readonly string[]): Activity => ({
    id,
    package: id,
    title: '',
    after: after.map((text) => ({ activity: text, from: 'finish', gapMinutes: 0 })),
    work: { kind: 'whole', minutes: 1 },
    lines: [],
    isolation: [],
    resources: [],
    loud: false,
    place: 'inside',
  });

  it('are found exactly where taking away one by one what waits for nothing gets stuck', () => {
    const graph = fc.array(fc.array(fc.nat(7), { maxLength: 2 }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(graph, (links) => {
        const activities = links.map((after, index) => activity(String(index), after.map(String)));
        let left = activities;
        for (let before = -1; before !== left.length;) {
          before = left.length;
          left = left.filter((item) =>
            item.after.some((link) => left.some((other) => other.id === link.activity)),
          );
        }
        const cycles = cyclesOf(activities);
        expect(cycles.length > 0).toBe(left.length > 0);
        for (const cycle of cycles) {
          cycle.forEach((id, at) => {
            const next = cycle[(at + 1) % cycle.length]!;
            expect(activities[Number(id)]!.after.map((link) => link.activity)).toContain(next);
          });
        }
      }),
    );
  });

  it('of a hundred thousand are found without exhausting the stack', () => {
    const size = 100_000;
    const ring = Array.from({ length: size }, (_, index) =>
      activity(String(index), [String((index + 1) % size)]),
    );
    expect(cyclesOf(ring).map((cycle) => cycle.length)).toEqual([size]);
  });
});

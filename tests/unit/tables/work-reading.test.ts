import { describe, expect, it } from 'vitest';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { emptyPlan } from '../../../src/model/index.js';
import { activitiesFrom, newReading, planFromDocument } from '../../../src/tables/index.js';
import { takeReading } from '../../../src/tables/kinds/work-reading.js';

const files = (work: string) =>
  Object.entries({
    'windows.csv': 'window,start,end,lines\nW,2027-05-08 23:00,2027-05-09 05:00,Up\n',
    'work.csv': work,
  }).map(([name, text]) => ({ name, bytes: new TextEncoder().encode(text) }));

const work = 'package,activity,minutes,after\nP,A,60,\nP,B,x,A\nP,C,30,A\n';

describe('an imported table of work', () => {
  it('is not read a second time for the first answer, which is as if it were', async () => {
    const { document } = await importFiles(files(work), emptyPlan('Night', 'Europe/London'));
    const first = planFromDocument(document);
    // Taken once; a second reading makes all of it anew.
    const anew = planFromDocument(document);
    expect(first.plan).toEqual(anew.plan);
    expect(first.faults).toEqual(anew.faults);
    expect(first.faults.map((fault) => fault.line)).toContain(3);
    expect(anew.plan.activities[0]).not.toBe(first.plan.activities[0]);
  });

  it('hands on the activities that were made of its rows', async () => {
    const { document } = await importFiles(files(work), emptyPlan('Night', 'Europe/London'));
    const reading = takeReading(document.tables.work)!;
    expect(reading).toBeDefined();
    const { columns, rows } = document.tables.work;
    const table = {
      delimiter: ',',
      columns,
      line: 1,
      rows: rows.map((cells, at) => ({ cells, line: at + 2 })),
      faults: [],
    };
    const options = { file: 'work.csv', zone: 'Europe/London' };
    const [kept] = activitiesFrom(table, { ...options, memory: reading }).activities;
    const [again] = activitiesFrom(table, { ...options, memory: reading }).activities;
    expect(kept).toBe(again);
    expect(takeReading(document.tables.work)).toBeUndefined();
    expect(activitiesFrom(table, { ...options, memory: newReading() }).activities[0]).toEqual(kept);
  });
});

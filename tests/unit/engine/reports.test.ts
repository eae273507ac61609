import { english } from '../../../src/engine/english/say.js';
import { describe, expect, it } from 'vitest';
import { accountReport } from '../../../src/engine/report/account-report.js';
import type { ReportBasis } from '../../../src/engine/report/facts.js';
import { overrunReport } from '../../../src/engine/report/overrun-report.js';
import { reportIn } from '../../../src/engine/report/report-in.js';
import { tableOfReport } from '../../../src/engine/report/report-table.js';
import type { Report } from '../../../src/engine/report/report.js';
import { priceOf } from '../../../src/engine/price.js';
import { addMinutes } from '../../../src/calendar/index.js';
import { cautions } from '../../../src/model/index.js';
import { account } from '../../../src/price/index.js';
import { exportTable } from '../../../src/tables/write/export-tables.js';
import { readWorkbook } from '../../../src/tables/workbook/read-workbook.js';
import { aBook, aResource, at, aWindow, trainsDue } from '../price/builders.js';

const window = aWindow();
const trains = trainsDue([10, 24], 1, window);
const resources = [aResource('gang', 60)];
const prices = aBook({
  delay: { by: 'train', rate: '50', headwayMinutes: 4 },
  fixed: [{ code: 'buses', name: 'Buses called', afterMinutes: 30, amount: '2800' }],
});
const plan = { zone: window.zone, windows: [window], activities: [], resources };
const placements = [
  { activity: 'A', window: 'W1', from: at('2027-05-13 01:00'), to: at('2027-05-13 02:00') },
];
const basis: ReportBasis = {
  window,
  document: 'Vale works',
  plan: {
    placements,
    standing: 'agreed',
    agreed: { name: 'Spring', revision: 3, agreedAt: at('2027-01-12 10:05'), by: 'A. Planner' },
    broken: true,
  },
  prices,
};
const factsOf = (report: Report<string>): Record<string, string> =>
  Object.fromEntries(report.facts.map((fact) => [fact.label, fact.value]));

describe('the report of an overrun', () => {
  const answer = priceOf(
    { plan: { ...plan, rules: { schema: 1, name: 'none' } as never }, trains, prices },
    { window: 'W1', overrunMinutes: 90, maxMinutes: 90, compareMinutes: [20, 90] },
  );
  const report = reportIn(overrunReport(answer, basis), english);

  it('says window, booked end, plan and revision, and each length with its handback and total', () => {
    expect(factsOf(report)).toMatchObject({
      Window: 'W1, Bridge deck, first night',
      'Booked end': 'Thu 13 May 2027 05:00',
      Document: 'Vale works',
      'Handed back 20 min late': 'Thu 13 May 2027 05:20: GBP 520.00',
      'Handed back 1 h 30 late': 'Thu 13 May 2027 06:30: GBP 10,390.00',
    });
    const said = factsOf(report)['Plan of the work'];
    for (const words of ['agreed plan 3', '"Spring"', 'by A. Planner', 'no longer holds'])
      expect(said).toContain(words);
  });

  it('has heads with sums and sources, trains, what is free and why, what is not priced, and every caution', () => {
    const [heads] = report.tables;
    expect(heads!.columns).toEqual([
      'head of cost',
      '20 min late, GBP',
      '90 min late, GBP',
      'counted',
      'source',
    ]);
    // 20 late: T1 10. At 90: T1 80 and T2, four behind it, 70. Gang of one at 60 an hour.
    expect(heads!.rows.map((row) => row.slice(0, 3))).toEqual([
      ['Delay to trains', '500.00', '7500.00'],
      ['Plant standing: gang', '20.00', '90.00'],
      ['Buses called', '0.00', '2800.00'],
      ['Total of what is counted', '520.00', '10390.00'],
    ]);
    const trainsShown = report.tables.find((table) => table.title.startsWith('Trains'))!;
    expect(trainsShown.rows.map((row) => [row[0], row[3]])).toEqual([
      ['T1', '80'],
      ['T2', '70'],
    ]);
    const lists = Object.fromEntries(report.lists.map((list) => [list.title, list.items.join()]));
    expect(lists['Not priced']).toContain('speed restriction');
    expect(report.cautions).toEqual(cautions);
  });

  it('is one table as CSV, and as a workbook a sheet for each part with figures as numbers', async () => {
    const csv = new TextDecoder().decode(
      (await exportTable(tableOfReport(report, english), 'csv')).bytes,
    );
    for (const words of ['By head of cost,Buses called,0.00,2800.00', 'Caution,', 'Booked end'])
      expect(csv).toContain(words);
    const book = await exportTable(tableOfReport(report, english), 'xlsx');
    const { sheets } = await readWorkbook(book.bytes);
    expect(sheets.map((sheet) => sheet.name)).toEqual([
      'Report',
      'By head of cost',
      'How each came about',
      'Trains late or cancelled, 90 mi',
      'Plant and people on site',
    ]);
    expect(sheets[1]!.rows.at(-1)!.cells.slice(0, 3)).toEqual([
      'Total of what is counted',
      '520',
      '10390',
    ]);
  });
});

describe('the report of an account', () => {
  const found = account({
    window,
    prices,
    trains,
    resources,
    actualHandback: addMinutes(window.end, 20),
    trainActuals: [{ train: 'T1', passedAt: null, claimedBy: 'Operator' }],
  });
  const report = reportIn(accountReport(found, basis), english);

  it('says window, booked end, handback, minutes late, total, and the plan with its revision', () => {
    expect(factsOf(report)).toMatchObject({
      Window: 'W1, Bridge deck, first night',
      'Booked end': 'Thu 13 May 2027 05:00',
      'Handed back': 'Thu 13 May 2027 05:20',
      'Minutes late': '20',
      Total: 'GBP 20.00',
    });
    expect(factsOf(report)['Plan of the work']).toContain('agreed plan 3, "Spring"');
  });

  it('lists each train, and says that no minutes are charged for one that was cancelled', () => {
    expect(report.tables.find((table) => table.title.startsWith('Trains'))!.rows).toEqual([
      ['T1', 'Thu 13 May 2027 05:10', 'cancelled', '', '1', '0', 'recorded', '0.00'],
    ]);
    expect(report.lists.flatMap((list) => list.items).join()).toContain('priced at nothing');
  });
});

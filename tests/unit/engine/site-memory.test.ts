import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { SiteCache } from '../../../src/engine/incremental/site-cache.js';
import { wholeReading } from '../../../src/engine/site/site-plan.js';
import { emptyPlan, readPlanFile, type PlanDocument } from '../../../src/model/index.js';

const golden = (): PlanDocument =>
  readPlanFile(readFileSync('tests/golden/release-0.1.0.plan.json', 'utf8')).document!;

it('an edit leaves work that heeds the wind the same object, where it touches neither', () => {
  const document = golden();
  const { windows } = document.tables;
  const rows = windows.rows.map((row, at) =>
    at === 0
      ? row.map((cell, column) => (windows.columns[column] === 'title' ? 'New' : cell))
      : row,
  );
  const edited: PlanDocument = {
    ...document,
    tables: { ...document.tables, windows: { ...windows, rows } },
  };
  const memory = new SiteCache();
  const before = memory.read(document, wholeReading).plan;
  const after = memory.read(edited, wholeReading).plan;
  expect(after.windows[0]!.title).toBe('New');
  expect(before.activities.some((activity) => (activity.heeds?.length ?? 0) > 0)).toBe(true);
  before.activities.forEach((activity, at) => expect(after.activities[at]).toBe(activity));
  expect(after.rules).toBe(before.rules);
});

it('no table and no limit of the site is left out in silence while what reads them is not there', () => {
  const { tables, site, ...rest } = golden();
  const none = emptyPlan('', rest.zone).tables;
  const bare: PlanDocument = {
    ...rest,
    tables: { ...none, windows: tables.windows, work: tables.work },
  };
  const { windows, activities } = new SiteCache().read(bare).plan;
  expect(windows.length).toBeGreaterThan(0);
  expect(activities.length).toBeGreaterThan(0);
  const others = Object.entries(tables).filter(([kind]) => kind !== 'windows' && kind !== 'work');
  const given = others.filter(([, table]) => (table?.columns.length ?? 0) > 0);
  expect(given.length).toBeGreaterThan(2);
  for (const [kind, table] of given)
    expect(() =>
      new SiteCache().read({ ...bare, tables: { ...bare.tables, [kind]: table } }),
    ).toThrow(RangeError);
  expect(site).toBeDefined();
  expect(() => new SiteCache().read({ ...bare, ...(site && { site }) })).toThrow(RangeError);
});

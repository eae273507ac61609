import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { SiteCache } from '../../../src/engine/incremental/site-cache.js';
import { readPlanFile, type PlanDocument } from '../../../src/model/index.js';

it('an edit leaves work that heeds the wind the same object, where it touches neither', () => {
  const text = readFileSync('tests/golden/release-0.1.0.plan.json', 'utf8');
  const document = readPlanFile(text).document!;
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
  const before = memory.read(document).plan;
  const after = memory.read(edited).plan;
  expect(after.windows[0]!.title).toBe('New');
  expect(before.activities.some((activity) => (activity.heeds?.length ?? 0) > 0)).toBe(true);
  before.activities.forEach((activity, at) => expect(after.activities[at]).toBe(activity));
  expect(after.rules).toBe(before.rules);
});

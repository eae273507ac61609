import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Session } from '../../../src/engine/incremental/session.js';
import { createInlineEngine } from '../../../src/engine/index.js';
import {
  fitOne,
  LedgerCache,
  packagesIn,
  PairVerdict,
  quickStates,
} from '../../../src/planner/fit/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { plainly, stepped, steps } from '../../helpers/document-steps.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';

const cases = Number(process.env['INCREMENTAL_CASES'] ?? 12);
describe('a session', () => {
  it('comes to the same as working all out afresh, faults and their places too, after any edits', async () => {
    const engine = createInlineEngine();
    const { document: whole } = await engine.importFiles(sampleFiles(), emptyDocument);
    // A part of the sample, so that verdicts with all their reasons are quick to compare.
    const start: PlanDocument = {
      ...whole,
      tables: {
        ...whole.tables,
        windows: { ...whole.tables.windows, rows: whole.tables.windows.rows.slice(0, 5) },
        work: { ...whole.tables.work, rows: whole.tables.work.rows.slice(0, 16) },
      },
    };
    fc.assert(
      fc.property(steps, (list) => {
        const session = new Session();
        session.recompute(start);
        let document = start;
        for (const step of list) {
          document = stepped(document, step);
          const kept = session.recompute(document);
          expect(plainly(kept)).toEqual(plainly(new Session().recompute(document)));
        }
      }),
      { numRuns: cases, seed: 5 },
    );
  });

  it('keeps every ledger, package and verdict that an edit does not touch', async () => {
    const engine = createInlineEngine();
    const { document } = await engine.importFiles(sampleFiles(), emptyDocument);
    const before = await engine.recompute(document);
    const again = await engine.recompute({ ...document, name: 'other' });
    expect(
      [again.plan.windows, again.ledgers, again.packages, again.fits].map(
        (item, at) =>
          item === [before.plan.windows, before.ledgers, before.packages, before.fits][at],
      ),
    ).toEqual([true, true, true, true]);
    const title = document.tables.windows.columns.indexOf('title');
    const rows = document.tables.windows.rows.slice();
    rows[0] = rows[0]!.with(title, 'Another title');
    const { windows } = document.tables;
    const after = await engine.recompute({
      ...document,
      tables: { ...document.tables, windows: { ...windows, rows } },
    });
    expect(after.ledgers.filter((ledger, at) => ledger !== before.ledgers[at])).toHaveLength(1);
    expect(after.packages).toBe(before.packages);
    const changed = after.fits.filter((fit, at) => fit !== before.fits[at]);
    expect(changed).toHaveLength(before.packages.length);
  });
});

describe('a verdict before its reasons', () => {
  it('says what the whole verdict says', () => {
    for (let seed = 1; seed <= 120; seed += 1) {
      const { plan } = randomPlan(seed);
      const book = new LedgerCache(plan);
      for (const [name, activities] of packagesIn(plan.activities)) {
        const states = quickStates(plan, activities, plan.windows, book);
        plan.windows.forEach((window, at) => {
          const whole = fitOne(plan, name, window.id);
          const explainer = { explain: () => whole, most: () => undefined };
          const quick = new PairVerdict({ id: name }, window, states[at]!, explainer);
          expect(quick.fits).toBe(whole.fits);
          if (quick.settled && !quick.fits) expect(quick.firstCode).toBe(whole.reasons[0]?.code);
          expect(quick.spareMinutes).toBe(whole.spareMinutes);
        });
      }
    }
  });
});

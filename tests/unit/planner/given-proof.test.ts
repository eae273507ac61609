import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { allocate, assess } from '../../../src/engine/search.js';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { withAgreed, type Placement, type PlanDocument } from '../../../src/model/index.js';
import { inputsId } from '../../../src/planner/given/proof.js';
import { proofOf } from '../../../src/planner/given/proof-of.js';
import { planFromDocument } from '../../../src/tables/index.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';

const { document } = await importFiles(sampleFiles(), emptyDocument);
const planOf = (of: PlanDocument) => planFromDocument(of).plan;
const plan = planOf(document);
const found = allocate(plan, { clock: () => 0 });
const proof = proofOf(found)!;
const agreed = (placements: readonly Placement[]) =>
  withAgreed(undefined, { name: 'Spring', agreedAt: 0, placements, proof });
const wordsOf = (of: PlanDocument, placements = found.placements) =>
  assess(planOf(of), placements, agreed(placements)).allocation.certificate;

/** The document with one cell of a table changed to something else. */
function withCell(
  table: 'windows' | 'work' | 'resources',
  row: number,
  column: number,
): PlanDocument {
  const own = document.tables[table];
  const rows = own.rows.map((cells, at) =>
    at === row ? cells.map((cell, i) => (i === column ? `${cell} x` : cell)) : cells,
  );
  return { ...document, tables: { ...document.tables, [table]: { ...own, rows } } };
}

describe('what a search proved of an agreed plan', () => {
  it('is said again while the placements and the tables are as they were', () => {
    const { certificate } = assess(plan, found.placements, agreed(found.placements)).allocation;
    expect(certificate.objectives).toEqual(found.certificate.objectives);
    expect(certificate.text).toBe(`as given; ${found.certificate.text}`);
    expect(certificate.proven).toBe(true);
    expect(certificate.verified).toBe(true);
    // Without what was kept, less is known.
    const bare = assess(plan, found.placements).allocation.certificate;
    expect(bare.objectives.filter((objective) => objective.proven).length).toBeLessThan(
      certificate.objectives.filter((objective) => objective.proven).length + 1,
    );
  });

  it('is not said of other placements: a piece a minute later, a piece dropped, a unit less', () => {
    const { placements } = found;
    const [first, ...others] = placements;
    const later = { ...first!, from: first!.from + MINUTE, to: first!.to + MINUTE };
    const repeated = placements.findIndex(({ units = 0 }) => units > 1);
    const fewer = placements.map((placement, at) =>
      at === repeated ? { ...placement, units: placement.units! - 1 } : placement,
    );
    for (const other of [[later, ...others], others, fewer]) {
      const { text } = wordsOf(document, other);
      const plain = assess(plan, other).allocation.certificate.text;
      expect(text).toBe(plain);
      expect(text).not.toContain('proven');
    }
  });

  it('is not said once any cell that the plan is read from is another', () => {
    const was = inputsId(plan);
    const changed = (['windows', 'work', 'resources'] as const).flatMap((table) =>
      document.tables[table].columns.map((_, column) => withCell(table, 2, column)),
    );
    let others = 0;
    for (const other of changed) {
      const now = planOf(other);
      if (JSON.stringify(now) === JSON.stringify(plan)) continue;
      others += 1;
      expect(inputsId(now)).not.toBe(was);
    }
    expect(others).toBeGreaterThan(20);
    const cut = plan.windows.map((window) =>
      window.id === 'N15' ? { ...window, end: window.end - MINUTE } : window,
    );
    const { certificate } = assess(
      { ...plan, windows: cut },
      found.placements,
      agreed(found.placements),
    ).allocation;
    expect(certificate.text).toBe(
      assess({ ...plan, windows: cut }, found.placements).allocation.certificate.text,
    );
    expect(certificate.text).not.toBe(`as given; ${found.certificate.text}`);
  });

  it('is not said once a row is dropped, and is whatever the order of the rows', () => {
    const without = { ...plan, windows: plan.windows.filter(({ id }) => id !== 'N16') };
    expect(inputsId(without)).not.toBe(proof.inputs);
    const turned = {
      ...plan,
      windows: plan.windows.toReversed(),
      activities: plan.activities.toReversed(),
      resources: plan.resources.toReversed(),
    };
    expect(inputsId(turned)).toBe(proof.inputs);
  });

  it('is not believed where it is at odds with the plan, or has other aims', () => {
    const { placements } = found;
    const told = (objectives: (typeof proof)['objectives']) =>
      assess(
        plan,
        placements,
        withAgreed(undefined, {
          name: 'X',
          agreedAt: 0,
          placements,
          proof: { ...proof, objectives },
        }),
      ).allocation.certificate.text;
    const plain = assess(plan, placements).allocation.certificate.text;
    expect(
      told(
        proof.objectives.map((objective) => ({
          ...objective,
          lowerBound: objective.lowerBound + 1e6,
        })),
      ),
    ).toBe(plain);
    expect(told(proof.objectives.toReversed())).toBe(plain);
  });
});

import { describe, expect, it } from 'vitest';
import { changesBetween } from '../../../src/plan/index.js';
import { OpenPlan, whatComesIn } from '../../../src/plan/open.js';
import { planOf, retyped, typed } from '../store/plans.js';

const text = (length: number): string => 'x'.repeat(length);

describe('a text that is typed', () => {
  it('may be as long as others take', () => {
    const plan = OpenPlan.of(planOf('a'));
    plan.change(typed(0, text(100_000)), 'typed');
    expect(whatComesIn(plan.state())).toBeUndefined();
    expect(plan.document.tables.work.rows[0]![0]).toHaveLength(100_000);
    plan.close();
  });

  it.each([
    ['a cell', typed(0, text(100_001))],
    ['a heading', { table: 'work', steps: [{ heading: text(100_001), column: 0 }] }],
    ['a row', { table: 'work', steps: [{ addRows: [['b', text(100_001)]], at: 0 }] }],
    ['a name', { part: ['name'], value: text(100_001) }],
  ])('is refused where it is longer, and nothing is changed: %s', (_, change) => {
    const plan = OpenPlan.of(planOf('a'));
    const { document } = plan;
    const also = { part: ['zone'], value: 'UTC' };
    expect(() => plan.change([also, change], 'typed')).toThrow(
      new RangeError(
        'Nothing was changed: a text of 100,001 characters is longer than a plan takes (100,000). Shorten it.',
      ),
    );
    expect(plan.document).toBe(document);
    expect(plan.undo.undoLabel).toBeUndefined();
    plan.close();
  });

  it('is taken with its table whole where it comes from a file, and others take it', () => {
    const plan = OpenPlan.of(planOf('a', 'b'));
    const next = retyped(plan.document, 1, text(300_000));
    plan.change(changesBetween(plan.document, next), 'from a file');
    expect(plan.document.tables).toEqual(next.tables);
    expect(whatComesIn(plan.state())).toBeUndefined();
    plan.close();
  });
});

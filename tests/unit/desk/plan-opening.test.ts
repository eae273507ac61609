import { describe, expect, it } from 'vitest';
import { PlanOpening } from '../../../components/desk/files/plan-opening.js';
import { defaultStrings } from '../../../components/desk/strings.js';
import { loadOpen, type OpenPlan } from '../../../src/plan/index.js';
import { planOf, rowsOf, typed } from '../store/plans.js';

/** A desk whose plan opens when the test lets it. */
function aDesk() {
  const told: string[] = [];
  const turns: { readonly let: () => void; readonly fail: () => void }[] = [];
  let plan: OpenPlan | undefined;
  const desk = {
    words: defaultStrings,
    moment: () => 0,
    say: () => undefined,
    complain: (trouble: string) => void told.push(trouble),
  };
  const load: typeof loadOpen = () =>
    new Promise((resolve, reject) =>
      turns.push({ let: () => resolve(loadOpen()), fail: () => reject(new Error('no network')) }),
    );
  const opening = new PlanOpening(desk, (opened) => (plan = opened), load);
  const type = (row: number, text: string): void => {
    if (plan) plan.change(typed(row, text), text);
    else opening.wait(() => type(row, text));
  };
  const rows = (): string[] | undefined => plan && rowsOf(plan.document);
  return { opening, type, rows, told, turns, undo: () => plan?.undo.undo() };
}

describe('what is typed before the plan is open', () => {
  it('is done in the order in which it was typed, each step to be undone by itself', async () => {
    const { opening, type, rows, turns, undo } = aDesk();
    const opened = opening.begin(planOf('a', 'b'));
    type(0, 'c');
    type(0, 'd');
    type(1, 'e');
    expect(rows()).toBeUndefined();
    turns[0]!.let();
    await opened;
    expect(rows()).toEqual(['d', 'e']);
    undo();
    undo();
    expect(rows()).toEqual(['c', 'b']);
  });

  it('waits where loading fails, says so, and is done when the next change can load it', async () => {
    const { opening, type, rows, told, turns } = aDesk();
    const opened = opening.begin(planOf('a', 'b'));
    type(0, 'c');
    turns[0]!.fail();
    await opened;
    expect(told).toEqual([defaultStrings.cannotLoadPlans('no network')]);
    type(1, 'd');
    turns[1]!.let();
    await expect.poll(rows).toEqual(['c', 'd']);
  });

  it('goes with its document where another is shown first', async () => {
    const { opening, type, rows, turns } = aDesk();
    const opened = opening.begin(planOf('a'));
    type(0, 'b');
    void opening.begin(planOf('x'));
    turns[0]!.let();
    await opened;
    expect(rows()).toEqual(['x']);
  });

  it('is done but for what cannot be done, which is said', async () => {
    const { opening, type, rows, told, turns } = aDesk();
    const opened = opening.begin(planOf('a'));
    opening.wait(() => {
      throw new RangeError('no such place');
    });
    type(0, 'b');
    turns[0]!.let();
    await opened;
    expect(rows()).toEqual(['b']);
    expect(told).toEqual(['no such place']);
  });
});

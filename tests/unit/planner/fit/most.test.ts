import { describe, expect, it } from 'vitest';
import { unitsLeft, type Activity, type Plan } from '../../../../src/model/index.js';
import { LedgerCache, mostThatFits, packagesIn } from '../../../../src/planner/fit/index.js';
import { fitsOracle } from '../../../helpers/fits-oracle.js';
import { withOwnLinks } from '../../../helpers/line-check.js';
import { oracle } from '../../../helpers/oracle.js';
import { activity, plan, resource, rules, window } from '../../../helpers/plan-builders.js';
import { randomLinePlan } from '../../../helpers/random-line-plan.js';
import { randomPlan } from '../../../helpers/random-plan.js';

const cases = Number(process.env['MOST_CASES'] ?? 150);

const mostOf = (document: Plan) =>
  mostThatFits(document, document.activities, document.windows[0]!, new LedgerCache(document));

describe('mostThatFits', () => {
  it('tells how many units go in where not all do', () => {
    const of = (minutes: number) =>
      mostOf(
        plan({
          windows: [window('P1', 0, minutes)],
          activities: [activity('A1', 0, { units: [8, 60, 60, 40] })],
        }),
      );
    expect(of(500)).toEqual({ pieces: 0, ofPieces: 1, units: 6, ofUnits: 8, proven: true });
    expect(of(160)).toMatchObject({ pieces: 0, units: 1 });
    expect(of(159)).toMatchObject({ pieces: 0, units: 0 });
    expect(of(580)).toMatchObject({ pieces: 1, units: 8 });
  });

  it('counts the pieces that go in where one of them needs what the window does not book', () => {
    const document = plan({
      windows: [window('P1', 0, 480)],
      activities: [
        activity('A1', 60),
        activity('A2', 60, { isolation: ['S1'] }),
        activity('A3', 60, { after: ['A2'] }),
        activity('A4', 60, { after: ['A1'] }),
      ],
    });
    expect(mostOf(document)).toMatchObject({ pieces: 2, ofPieces: 4, ofUnits: 0 });
  });

  it('is nothing where the window takes none of the inside work', () => {
    const document = plan({
      windows: [window('P1', 0, 480, { lines: ['Down'] })],
      activities: [
        activity('A1', 60, { lines: ['Up'] }),
        activity('A2', 0, { lines: ['Up'], units: [4, 10, 5, 5] }),
        activity('A3', 60, { place: 'outside' }),
      ],
    });
    expect(mostOf(document)).toEqual({
      pieces: 0,
      ofPieces: 2,
      units: 0,
      ofUnits: 4,
      proven: true,
    });
  });

  it('finishes as many pieces as can be, not the first that come', () => {
    const document = plan({
      windows: [window('P1', 0, 180)],
      activities: [activity('A1', 180), activity('A2', 90), activity('A3', 90)],
      resources: [resource('gang', [{ capacity: 1 }])],
      rules: rules({}),
    });
    const needing = document.activities.map((item) => ({
      ...item,
      resources: [{ resource: 'gang', amount: 1 }],
    }));
    expect(mostOf({ ...document, activities: needing })).toMatchObject({ pieces: 2, ofPieces: 3 });
  });

  it('opens nothing that is not made good in the window', () => {
    const document = plan({
      windows: [window('P1', 0, 300)],
      activities: [
        activity('A1', 60),
        { ...activity('A2', 120, { after: ['A1'] }), madeGoodBy: ['A3'] },
        activity('A3', 180, { after: ['A2'] }),
      ],
    });
    expect(mostOf(document)).toMatchObject({ pieces: 1, ofPieces: 3 });
  });

  it('does units of work that opens the line, but not its last, where that could not be made good', () => {
    const document = plan({
      windows: [window('P1', 0, 300)],
      activities: [
        { ...activity('A1', 0, { units: [5, 60, 0, 0] }), madeGoodBy: ['A2'] },
        activity('A2', 60, { after: ['A1'] }),
      ],
    });
    expect(mostOf(document)).toMatchObject({ pieces: 0, units: 4, ofUnits: 5 });
  });

  it('is known of much work of which hardly any goes, by hand', () => {
    const document = plan({
      windows: [window('P1', 0, 120)],
      activities: [
        ...Array.from({ length: 12 }, (_, i) => activity(`A${i}`, 121)),
        ...Array.from({ length: 3 }, (_, i) => activity(`R${i}`, 0, { units: [40, 10, 10, 0] })),
      ],
    });
    // 10 minutes to set up and 11 units of 10 minutes, side by side.
    const [units, ofUnits] = [3 * 11, 3 * 40];
    expect(mostOf(document)).toEqual({ pieces: 0, ofPieces: 15, units, ofUnits, proven: true });
  });

  it('takes nothing in a withdrawn window', () => {
    const document = plan({
      windows: [window('P1', 0, 480, { status: 'withdrawn' })],
      activities: [activity('A1', 60)],
    });
    expect(mostOf(document)).toMatchObject({ pieces: 0, ofPieces: 1, proven: true });
  });

  // Second reckoning: each choice of how many units of each activity, asked step by step of the clock.
  it(`is the most of every choice in ${cases} random packages, tried step by step of the clock`, () => {
    let partly = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed);
      for (const [name, activities] of packagesIn(document.activities)) {
        if (activities.some((item) => item.place === 'outside')) continue;
        const one = document.windows[seed % document.windows.length]!;
        const got = mostThatFits(document, activities, one, new LedgerCache(document));
        const most = mostByChoice(activities, (some) => fitsOracle(document, one, some, step));
        expect({ seed, name, ...got }).toEqual({ seed, name, ...most, proven: true });
        if (most.pieces + most.units > 0 && most.pieces < most.ofPieces) partly += 1;
      }
    }
    expect(partly).toBeGreaterThan(cases / 20);
  });

  it(`leaves no line open that must be fit to run, in ${Math.ceil(cases / 10)} random packages`, () => {
    for (let seed = 1; seed <= cases / 10; seed += 1) {
      const { plan: document, step } = randomLinePlan(seed);
      for (const [name, activities] of packagesIn(document.activities)) {
        if (activities.some((item) => item.place === 'outside')) continue;
        const one = document.windows[0]!;
        const got = mostThatFits(document, activities, one, new LedgerCache(document));
        const most = mostByChoice(activities, (some) => {
          const alone = { ...document, windows: [one], activities: some };
          const value = oracle(alone, ['key-dates', 'finish'], step);
          return value.unplaced === 0 && value.values['key-dates'] === 0;
        });
        expect({ seed, name, ...got }).toEqual({ seed, name, ...most, proven: true });
      }
    }
  });
});

/** Every choice of units by activity, best first; the first that `goes`. */
function mostByChoice(
  activities: readonly Activity[],
  goes: (some: readonly Activity[]) => boolean,
): { pieces: number; ofPieces: number; units: number; ofUnits: number } {
  const left = withOwnLinks(activities).filter((link) => unitsLeft(link.work) > 0);
  const all = left.map((item) => unitsLeft(item.work));
  let choices: number[][] = [[]];
  for (const units of all)
    choices = choices.flatMap((choice) =>
      Array.from({ length: units + 1 }, (_, k) => [...choice, k]),
    );
  const count = (choice: readonly number[]) => ({
    pieces: choice.filter((units, at) => units === all[at]).length,
    units: choice.reduce(
      (sum, units, at) => sum + (left[at]!.work.kind === 'units' ? units : 0),
      0,
    ),
  });
  const whole = count(all);
  const possible = choices
    .filter((choice) =>
      left.every(
        (item, at) =>
          choice[at] === 0 ||
          item.after.every((link) => {
            const other = left.findIndex((each) => each.id === link.activity);
            return other < 0 || choice[other]! >= (link.from === 'start' ? 1 : all[other]!);
          }),
      ),
    )
    .map((choice) => ({ choice, ...count(choice) }))
    .sort((a, b) => b.pieces - a.pieces || b.units - a.units);
  for (const { choice, pieces, units } of possible) {
    const isGood = left.every(
      (item, at) =>
        choice[at] !== all[at] ||
        !Array.isArray(item.madeGoodBy) ||
        item.madeGoodBy.every((id) => {
          const other = left.findIndex((each) => each.id === id);
          return other < 0 || choice[other] === all[other];
        }),
    );
    if (!isGood) continue;
    const some = left.flatMap((item, at) => (choice[at] === 0 ? [] : [cut(item, choice[at]!)]));
    if (some.length === 0 || goes(some))
      return { pieces, ofPieces: whole.pieces, units, ofUnits: whole.units };
  }
  throw new RangeError('nothing at all always goes');
}

/** An activity with so many of its units left; without its last unit it leaves nothing open. */
function cut(item: Activity, units: number): Activity {
  if (item.work.kind === 'whole' || units === unitsLeft(item.work)) return item;
  const { madeGoodBy: _, ...rest } = item;
  return { ...rest, work: { ...item.work, done: item.work.units - units } };
}

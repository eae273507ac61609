import { describe, expect, it } from 'vitest';
import { planOfWork } from '../../../src/cli/plan-of-work.js';
import { activity, plan, window } from '../../helpers/plan-builders.js';

const asked = { first: 'key-dates', seed: 1 } as const;
const parted = plan({
  windows: [window('W1', 0, 120), window('W2', 1440, 120)],
  activities: [activity('A', 100), activity('B', 100, { after: ['A'] })],
});

describe('a plan that handback, price and booking speak of', () => {
  it('says first what nobody said of the line between its windows, made here or given', () => {
    const made = planOfWork(parted, asked);
    const text =
      'Not said, so nobody can call this plan safe to run (1): A is in W1 and B in W2: nothing says whether the line is fit to run in between.';
    expect(made.notes[0]).toEqual({ code: 'unstated', text });
    const { placements } = made.allocation;
    const given = planOfWork(parted, asked, { placements, named: { id: made.plan.id } });
    expect(given.notes).toContainEqual({ code: 'unstated', text });
  });

  it('says nothing of it where it is said', () => {
    const fit = parted.activities.map((item) => ({ ...item, madeGoodBy: 'none' as const }));
    const { notes } = planOfWork({ ...parted, activities: fit }, asked);
    expect(notes.map((note) => note.code)).toEqual(['plan-made']);
  });
});

import { describe, expect, it } from 'vitest';
import { english } from '../../../src/engine/english/say.js';
import { MINUTE } from '../../../src/calendar/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import type { Allocation } from '../../../src/planner/search/types.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';

const document = plan({
  windows: [window('P1', 0, 480), window('P2', 1440, 480)],
  activities: [
    activity('A1', 60, { resources: { crane: 1 } }),
    activity('A2', 90, { resources: { crane: 1 }, after: ['A1'], keyDate: 120 }),
    activity('A3', 0, { units: [2, 20, 10, 5] }),
  ],
  resources: [resource('crane', [{ capacity: 1 }])],
});
const found = allocate(document, { clock: () => 0 });

/** The answer with one activity so much later, and all claims about the whole made to agree. */
function later(id: string, minutes: number, to: string): Allocation {
  const placements = found.placements.map((placement) =>
    placement.activity === id
      ? {
          ...placement,
          window: to,
          from: placement.from + minutes * MINUTE,
          to: placement.to + minutes * MINUTE,
        }
      : placement,
  );
  const finish = Math.max(...placements.map((placement) => placement.to)) / MINUTE;
  const late = Math.max(
    0,
    placements.find((placement) => placement.activity === 'A2')!.to / MINUTE - 120,
  );
  const windows = new Set(placements.map((placement) => placement.window)).size;
  const values: Record<string, number> = {
    'key-dates': late,
    margins: 0,
    finish,
    'fewest-windows': windows,
  };
  const objectives = found.certificate.objectives.map(({ name }) => ({
    name,
    value: values[name]!,
    lowerBound: values[name]!,
    proven: true,
  }));
  const [first] = objectives;
  return {
    ...found,
    placements,
    finishesAt: finish * MINUTE,
    windowsUsed: windows,
    certificate: {
      ...found.certificate,
      proven: true,
      lowerBound: first!.value,
      objective: first!.value,
      objectives,
      text: 'proven best',
    },
  };
}

const faultsOf = (answer: Allocation): string[] => {
  const { keyDates: _, floats: __, unstated: ___, ...rest } = answer;
  return verify(document, rest).map((fault) => `${fault.code}: ${english(fault.text)}`);
};

describe('a plan that is claimed to be proven best', () => {
  it('is not doubted where it is best', () => {
    expect(found.certificate).toMatchObject({ text: 'proven best' });
    expect(faultsOf(found)).toEqual([]);
  });

  it.each([
    ['a minute late', later('A2', 1, 'P1'), 'key-dates can be 30 where 31 is stated'],
    ['a night later', later('A3', 1440, 'P2'), 'finish can be 150'],
  ])('is found out by a search of the check where work is %s', (_, answer, text) => {
    expect(faultsOf(answer)).toEqual([expect.stringContaining(text)]);
  });

  it.each([
    'proven best',
    'of the search alone, as nobody said whether 1 pair of work may share a place: proven best',
    'key dates proven best; finish best found, at most 5 min from best',
  ])('is found out where the words say more than the values: %s', (text) => {
    const objectives = found.certificate.objectives.map((objective) => ({
      ...objective,
      proven: false,
      lowerBound: Math.min(objective.value, 0),
    }));
    const [{ lowerBound }] = objectives as [(typeof objectives)[number]];
    const certificate = { ...found.certificate, objectives, proven: false, lowerBound, text };
    expect(faultsOf({ ...found, certificate })).toContainEqual(
      expect.stringContaining('is not what the values say'),
    );
  });

  it('is found out where work is left out that finds its place', () => {
    const placements = found.placements.filter((placement) => placement.activity !== 'A3');
    const answer = {
      placements,
      unplaced: [{ activity: 'A3', reasons: [{ text: 'none' }] }],
      certificate: found.certificate,
    };
    expect(verify(document, answer).map((fault) => english(fault.text))).toContainEqual(
      expect.stringContaining('all work can be placed'),
    );
  });
});

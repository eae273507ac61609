import { describe, expect, it } from 'vitest';
import type { Allocation, Placement, Results } from '../../../src/engine/index.js';
import { resultValue } from '../../../components/sheet/result-column.js';
import { workColumns } from '../../../components/results/work-results.js';

const piece = (window: string | null, units?: number): Placement => ({
  activity: 'A',
  window,
  from: 0,
  to: 60_000,
  ...(units !== undefined && { units }),
});

/** What stands in the column `planned in` of the one activity. */
function plannedIn(placements: readonly Placement[]): string {
  const columns = workColumns({
    results: {
      plan: { activities: [{ id: 'A', package: 'P' }] },
      fits: [],
      packages: [],
    } as unknown as Results,
    plan: { placements, floats: [], unplaced: [], keyDates: [] } as unknown as Allocation,
    zone: 'Europe/London',
    idColumn: 0,
  });
  return resultValue(columns.find((column) => column.id === 'window')!.value(0, ['A'])).text;
}

describe('where the plan puts a piece of work', () => {
  it('names a window once, with the units of all its visits there', () => {
    expect(plannedIn([piece('B27', 4), piece('B27', 4), piece('S03', 2)])).toBe('B27 (8), S03 (2)');
  });

  it('names a window alone where nothing is counted, and work that needs none', () => {
    expect(plannedIn([piece('S01')])).toBe('S01');
    expect(plannedIn([piece(null)])).toBe('outside');
  });
});

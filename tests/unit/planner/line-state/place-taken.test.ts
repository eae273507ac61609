import { describe, expect, it } from 'vitest';
import type { Activity } from '../../../../src/model/index.js';
import { fitAll } from '../../../../src/planner/fit/index.js';
import { activity, plan, window } from '../../../helpers/plan-builders.js';

const night = window('W1', 0, 120, { lines: ['Up', 'Down'] });
const tamp = (occupies: Activity['occupies'], lines = ['Up']): Activity => ({
  ...activity('TAMP', 100, { lines }),
  ...(occupies && { occupies }),
});
const wires = activity('WIRES', 60, { lines: ['Up'] });
const reasons = (...activities: readonly Activity[]): readonly string[] =>
  fitAll(plan({ windows: [night], activities }))[0]!.reasons.map(
    (reason) => `${reason.code}: ${reason.text}`,
  );

describe('work that must have its place alone', () => {
  it('does not fit beside other work of its package, and the reason says that side by side it would', () => {
    expect(reasons(tamp('alone'), wires)).toContain(
      'place-taken: TAMP must have the place alone; side by side with other work it would fit W1',
    );
  });

  it('is no reason where the other shares it, lies on another line, or is too long by itself', () => {
    expect(reasons(tamp('shared'), wires)).toEqual([]);
    expect(reasons(tamp(undefined), wires)).toEqual([]);
    expect(reasons(tamp('alone', ['Down']), wires)).toEqual([]);
    const long = { ...tamp('alone'), work: { kind: 'whole' as const, minutes: 130 } };
    expect(reasons(long, wires).join()).not.toContain('side by side');
  });
});

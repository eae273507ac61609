import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HelpRuns, helpsMost, triedGroups } from '../../../src/risk/kernel/helps-most.js';
import { chancesOnTime, OnTimeRuns } from '../../../src/risk/kernel/on-time.js';
import {
  simulate,
  threePoint,
  whatIfs,
  type RiskNetwork,
  type WhatIf,
} from '../../../src/risk/index.js';

const rows = fc.array(
  fc.record({
    low: fc.integer({ min: 0, max: 30 }),
    more: fc.integer({ min: 0, max: 40 }),
    before: fc.array(fc.nat(20), { maxLength: 2 }),
    closed: fc.boolean(),
  }),
  { minLength: 3, maxLength: 10 },
);

/** A network in which every node waits for some of those before it, and some for the end of a closed stretch. */
const networkOf = (drawn: typeof rows extends fc.Arbitrary<infer T> ? T : never): RiskNetwork => ({
  nodes: drawn.map(({ low, more, before, closed }, index) => ({
    id: `N${index}`,
    duration: threePoint('triangular', { low, likely: low, high: low + more }),
    after: (index === 0 ? [] : before).map((node) => ({
      node: node % index,
      from: 'finish' as const,
      lagMinutes: 0,
    })),
    ...(closed && { closed: [{ from: 40, to: 55 }] }),
  })),
});

describe('what is asked of runs while they are drawn', () => {
  it('comes to the same as when they are drawn for it alone', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 20, max: 160 }), (drawn, deadlineMinutes) => {
        const network = networkOf(drawn);
        const groups = drawn.map((_, index) => [index]).slice(0, 8);
        const cases = drawn.map((_, index): WhatIf => {
          // Units of several visits, with other work between them.
          const left = [...drawn.keys()].slice(index).filter((node) => node % 3 !== 2);
          return { held: new Map(left.map((node) => [node, 0])), leftOut: true };
        });
        const options = { seed: 3, runs: 150, deadlineMinutes };
        const tried = triedGroups(network, groups)!;
        let helps: HelpRuns | undefined;
        let units: OnTimeRuns | undefined;
        const { criticality } = simulate(network, {
          ...options,
          changes: [...cases, ...tried.map(({ least }) => least)],
          alongside: (compiled, space) => {
            const counts = (units = new OnTimeRuns(compiled, cases, deadlineMinutes));
            const each = (helps = new HelpRuns(compiled, tried, deadlineMinutes));
            return (offset, lanesUsed) => {
              counts.take(space, offset, lanesUsed);
              each.take(space, offset, lanesUsed);
            };
          },
        });
        expect(helpsMost(network, options, criticality, groups, helps)).toEqual(
          helpsMost(network, options, criticality, groups),
        );
        const chances = units!.found(network, options);
        expect(chances).toEqual(chancesOnTime(network, options, cases));
        // The same cases, each gone through by itself.
        expect(chances).toEqual(whatIfs(network, options, cases).map(({ onTime }) => onTime));
      }),
      { numRuns: 200 },
    );
  });
});

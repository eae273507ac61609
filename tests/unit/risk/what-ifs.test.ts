import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chancesOnTime,
  constant,
  forwardPass,
  simulate,
  threePoint,
  whatIfs,
  type RiskNetwork,
  type RiskNode,
  type WhatIf,
} from '../../../src/risk/index.js';

const rowsOf = fc.array(
  fc.record({
    minutes: fc.integer({ min: 0, max: 60 }),
    more: fc.integer({ min: 0, max: 60 }),
    before: fc.array(
      fc.record({ node: fc.nat(20), lag: fc.integer({ min: 0, max: 30 }), start: fc.boolean() }),
      { maxLength: 3 },
    ),
    release: fc.integer({ min: 0, max: 200 }),
    closed: fc.boolean(),
  }),
  { minLength: 2, maxLength: 14 },
);
const casesOf = fc.array(
  fc.record({
    held: fc.array(fc.tuple(fc.nat(13), fc.integer({ min: 0, max: 80 })), { maxLength: 8 }),
    leftOut: fc.boolean(),
  }),
  { minLength: 1, maxLength: 8 },
);
type Rows = typeof rowsOf extends fc.Arbitrary<infer T> ? T : never;
type Cases = typeof casesOf extends fc.Arbitrary<infer T> ? T : never;

const networkOf = (rows: Rows, spread: boolean): RiskNetwork => ({
  nodes: rows.map((row, index): RiskNode => ({
    id: `N${index}`,
    duration: spread
      ? threePoint('triangular', {
          low: row.minutes,
          likely: row.minutes + row.more,
          high: row.minutes + 2 * row.more + 1,
        })
      : constant(row.minutes),
    after:
      index === 0
        ? []
        : row.before.map(({ node, lag, start }) => ({
            node: node % index,
            from: start ? 'start' : 'finish',
            lagMinutes: lag,
          })),
    releaseMinutes: row.release,
    ...(row.closed && {
      closed: [
        { from: 80, to: 130 },
        { from: 190, to: 220 },
      ],
    }),
  })),
});
const whatIfsOf = (cases: Cases, size: number): WhatIf[] =>
  cases.map(({ held, leftOut }) => ({
    held: new Map(held.map(([node, minutes]) => [node % size, leftOut ? 0 : minutes])),
    leftOut,
  }));

/** The last finish by the plain forward pass, on a network changed as the case says. */
function lastFinish({ nodes }: RiskNetwork, { held, leftOut }: WhatIf): number {
  const changed = nodes.map((node, index): RiskNode => {
    if (!held.has(index) || !leftOut) return node;
    const { releaseMinutes: _, closed: __, ...rest } = node;
    return { ...rest, after: rest.after.map((link) => ({ ...link, lagMinutes: 0 })) };
  });
  const minutes = (index: number): number => {
    const { duration } = nodes[index]!;
    return held.get(index) ?? (duration.kind === 'constant' ? duration.minutes : NaN);
  };
  return Math.max(0, ...forwardPass(changed, minutes).map((item) => item.finish));
}

describe('what-ifs on one network', () => {
  it('finish certain work when the forward pass does, whatever is held or left out', () => {
    fc.assert(
      fc.property(rowsOf, casesOf, (rows, cases) => {
        const network = networkOf(rows, false);
        const asked = whatIfsOf(cases, rows.length);
        const found = whatIfs(network, { runs: 1, seed: 1, deadlineMinutes: 200 }, asked);
        asked.forEach((item, k) => {
          const finish = lastFinish(network, item);
          expect(found[k]!.meanMinutes).toBe(finish);
          expect(found[k]!.onTime.probability).toBe(finish <= 200 ? 1 : 0);
        });
      }),
      { numRuns: 500 },
    );
  });

  it('give the figures of the plain simulation when nothing is changed, in any place of the list', () => {
    fc.assert(
      fc.property(rowsOf, casesOf, (rows, cases) => {
        const network = networkOf(rows, true);
        const options = { runs: 1500, seed: 3, deadlineMinutes: 240 };
        const plain = simulate(network, options);
        const unchanged = { held: new Map<number, number>() };
        const asked = [unchanged, ...whatIfsOf(cases, rows.length), unchanged];
        const found = whatIfs(network, options, asked);
        for (const item of [found[0]!, found.at(-1)!]) {
          expect(item.onTime).toEqual(plain.deadline!.onTime);
          expect(item.meanMinutes).toBeCloseTo(plain.meanMinutes, 8);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('do not hang on the order in which they are asked', () => {
    fc.assert(
      fc.property(rowsOf, casesOf, (rows, cases) => {
        const network = networkOf(rows, true);
        const options = { runs: 300, seed: 8, deadlineMinutes: 240 };
        const asked = whatIfsOf(cases, rows.length);
        const found = whatIfs(network, options, asked);
        const backward = [...whatIfs(network, options, [...asked].reverse())].reverse();
        expect(backward).toEqual(found);
      }),
      { numRuns: 100 },
    );
  });

  it('are on time when the forward pass is, each case of a row that changes one piece of work', () => {
    fc.assert(
      fc.property(rowsOf, casesOf, fc.array(fc.nat(7)), (rows, cases, cuts) => {
        const network = networkOf(rows, false);
        // Beside the cases, each again with fewer of its nodes, as units of one piece of work are left out.
        const asked = whatIfsOf(cases, rows.length).flatMap((item, k) => [
          item,
          ...cuts.map((cut) => ({ ...item, held: new Map([...item.held].slice(0, cut + k)) })),
        ]);
        const found = chancesOnTime(network, { runs: 1, seed: 1, deadlineMinutes: 200 }, asked);
        asked.forEach((item, k) => {
          expect(found[k]!.probability).toBe(lastFinish(network, item) <= 200 ? 1 : 0);
        });
      }),
      { numRuns: 1000 },
    );
  });

  it('have the same chance of being on time, run by run, however it is counted', () => {
    fc.assert(
      fc.property(rowsOf, casesOf, fc.array(fc.nat(7)), (rows, cases, cuts) => {
        const network = networkOf(rows, true);
        const asked = whatIfsOf(cases, rows.length).flatMap((item) => [
          item,
          ...cuts.map((cut) => ({ ...item, held: new Map([...item.held].slice(0, cut)) })),
        ]);
        const options = { runs: 300, seed: 8, deadlineMinutes: 240 };
        expect(chancesOnTime(network, options, asked)).toEqual(
          whatIfs(network, options, asked).map((item) => item.onTime),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('refuse minutes below zero, and minutes of what is left out', () => {
    const network = networkOf(
      [{ minutes: 5, more: 0, before: [], release: 0, closed: false }],
      false,
    );
    const options = { runs: 1, seed: 1, deadlineMinutes: 10 };
    expect(() => whatIfs(network, options, [{ held: new Map([[0, -1]]) }])).toThrow(RangeError);
    expect(() => whatIfs(network, options, [{ held: new Map([[0, 5]]), leftOut: true }])).toThrow(
      RangeError,
    );
  });
});

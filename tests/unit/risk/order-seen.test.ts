import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OrderSeen, type TickLink } from '../../../src/risk/kernel/order-seen.js';

/** Finishes by the rule itself: each starts when every link lets it. */
function finishes(lengths: readonly number[], linksOf: readonly (readonly TickLink[])[]): number[] {
  const size = lengths.length;
  const starts: number[] = [];
  return lengths.reduce<number[]>((done, length, i) => {
    const ready = linksOf[i]!.map(
      ({ slot, lag }) => (slot < size ? starts[slot]! : done[slot - size]!) + lag,
    );
    starts.push(Math.max(0, ...ready));
    return [...done, starts[i]! + length];
  }, []);
}

const size = 8;
const links = fc.array(
  fc.array(
    fc.record({ to: fc.nat(), atStart: fc.boolean(), lag: fc.integer({ min: -2, max: 3 }) }),
    { maxLength: 5 },
  ),
  { minLength: size, maxLength: size },
);
const lengthsDrawn = fc.array(fc.nat({ max: 4 }), { minLength: size, maxLength: size });

describe('links that say what others say', () => {
  const linkListsOf = (drawn: typeof links extends fc.Arbitrary<infer T> ? T : never) =>
    drawn.map((list, i) =>
      i === 0
        ? []
        : list.map(({ to, atStart, lag }) => ({ slot: (to % i) + (atStart ? 0 : size), lag })),
    );

  it('can go without any finish changing, whatever anything lasts', () => {
    fc.assert(
      fc.property(links, lengthsDrawn, (drawn, lengths) => {
        const all = linkListsOf(drawn);
        const order = new OrderSeen(size);
        const needed = all.map((list, i) => order.needed(i, list));
        expect(finishes(lengths, needed)).toEqual(finishes(lengths, all));
      }),
      { numRuns: 1000 },
    );
  });

  it('are those of what has waited for the same already, and one of two alike', () => {
    const order = new OrderSeen(3);
    const finish = (position: number, lag = 0): TickLink => ({ slot: 3 + position, lag });
    order.needed(0, []);
    order.needed(1, [finish(0)]);
    expect(order.needed(2, [finish(0), finish(1), finish(1)])).toEqual([finish(1)]);
    expect(order.needed(2, [finish(0, 1), finish(1)])).toEqual([finish(0, 1), finish(1)]);
    expect(order.needed(2, [{ slot: 0, lag: 0 }, finish(1)])).toHaveLength(2);
  });
});

import fc from 'fast-check';
import { constant, threePoint, type RiskNetwork, type RiskNode } from '../../src/risk/index.js';

interface Link {
  readonly back: number;
  readonly isStart: boolean;
  readonly lag: number;
}

const link: fc.Arbitrary<Link> = fc.record({
  back: fc.nat({ max: 4 }),
  isStart: fc.boolean(),
  lag: fc.constantFrom(0, 0, 0, 5, 20, -4),
});

/** Most work follows one other, in a chain. */
const links: fc.Arbitrary<readonly Link[]> = fc.oneof(
  fc.constant([{ back: 0, isStart: false, lag: 0 }]),
  fc.array(link, { maxLength: 3 }),
);

const node = fc.record({
  low: fc.nat({ max: 30 }),
  more: fc.constantFrom(0, 0, 0, 10, 40),
  after: links,
  release: fc.constantFrom(0, 0, 0, 30, 100),
  closed: fc.constantFrom(
    [],
    [],
    [{ from: 40, to: 55 }],
    [
      { from: 10, to: 25 },
      { from: 60, to: 90 },
    ],
  ),
});

/** Networks of work in chains and across, some of it of fixed length, some with closed stretches and dates. */
export const randomNetwork: fc.Arbitrary<RiskNetwork> = fc
  .array(node, { minLength: 2, maxLength: 12 })
  .map((drawn) => ({
    nodes: drawn.map(({ low, more, after, release, closed }, index): RiskNode => ({
      id: `N${index}`,
      duration:
        more === 0
          ? constant(low)
          : threePoint('triangular', { low, likely: low, high: low + more }),
      after: (index === 0 ? [] : after).map(({ back, isStart, lag }) => ({
        node: Math.max(0, index - 1 - back),
        from: isStart ? 'start' : 'finish',
        lagMinutes: lag,
      })),
      releaseMinutes: release,
      closed,
    })),
  }));

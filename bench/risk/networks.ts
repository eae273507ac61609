import {
  nextWord,
  randomState,
  threePoint,
  type RiskNetwork,
  type ThreePointKind,
} from '../../src/risk/index.js';

/** An invented network of `size` activities with one to three predecessors each among the dozen before it. */
export function betaNetwork(size: number, kind: ThreePointKind): RiskNetwork {
  const state = randomState(20);
  const pick = (below: number): number => nextWord(state) % below;
  return {
    nodes: Array.from({ length: size }, (_, index) => {
      const low = 10 + pick(40);
      const likely = low + pick(20);
      const high = likely + 1 + pick(60);
      const wanted = Math.min(index, 1 + pick(3));
      const before = new Set<number>();
      while (before.size < wanted) before.add(index - 1 - pick(Math.min(index, 12)));
      return {
        id: `N${index}`,
        duration: threePoint(kind, { low, likely, high }),
        after: [...before].map((node) => ({ node, from: 'finish' as const, lagMinutes: 0 })),
      };
    }),
  };
}

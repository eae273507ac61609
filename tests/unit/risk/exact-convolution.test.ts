import { describe, expect, it } from 'vitest';
import {
  nextWord,
  randomState,
  simulate,
  threePoint,
  type RiskLink,
  type RiskNode,
  type ThreePoint,
  type ThreePointKind,
} from '../../../src/risk/index.js';

/** Grid of the exact calculation, in minutes: its error is far below the simulation's. */
const STEP = 0.5;
const RUNS = 4000;
const NETWORKS = Number(process.env['RISK_NETWORKS'] ?? 60);

type Tree =
  | { kind: 'leaf'; shape: ThreePointKind; points: ThreePoint }
  | { kind: 'series' | 'parallel'; parts: Tree[] };

function randomTree(pick: (below: number) => number, depth: number): Tree {
  if (depth === 0 || pick(4) === 0) {
    const low = pick(20);
    const likely = low + pick(20);
    return {
      kind: 'leaf',
      shape: pick(2) === 0 ? 'triangular' : 'beta-pert',
      points: { low, likely, high: likely + 5 + pick(40) },
    };
  }
  const parts = Array.from({ length: 2 + pick(2) }, () => randomTree(pick, depth - 1));
  return { kind: pick(2) === 0 ? 'series' : 'parallel', parts };
}

/** Probability of each grid value, from the density itself: none of the tested code. */
function massOf(leaf: Tree & { kind: 'leaf' }): Float64Array {
  const { low, likely, high } = leaf.points;
  const width = high - low;
  const density = (x: number): number => {
    if (leaf.shape === 'triangular')
      return x < likely ? (x - low) / (likely - low) : (high - x) / (high - likely);
    const u = (x - low) / width;
    const mode = (likely - low) / width;
    return Math.pow(u, 4 * mode) * Math.pow(1 - u, 4 * (1 - mode));
  };
  const mass = new Float64Array(Math.ceil(high / STEP) + 2);
  const parts = 4000;
  let total = 0;
  for (let k = 0; k < parts; k += 1) {
    const x = low + ((k + 0.5) / parts) * width;
    const p = density(x);
    mass[Math.round(x / STEP)]! += p;
    total += p;
  }
  return mass.map((p) => p / total);
}

function sumOf(a: Float64Array, b: Float64Array): Float64Array {
  const sum = new Float64Array(a.length + b.length - 1);
  a.forEach((p, i) => {
    if (p > 0) for (let j = 0; j < b.length; j += 1) sum[i + j]! += p * b[j]!;
  });
  return sum;
}

function latestOf(a: Float64Array, b: Float64Array): Float64Array {
  const latest = new Float64Array(Math.max(a.length, b.length));
  let [upToA, upToB, before] = [0, 0, 0];
  for (let k = 0; k < latest.length; k += 1) {
    upToA += a[k] ?? 0;
    upToB += b[k] ?? 0;
    latest[k] = upToA * upToB - before;
    before = upToA * upToB;
  }
  return latest;
}

function exact(tree: Tree): Float64Array {
  if (tree.kind === 'leaf') return massOf(tree);
  return tree.parts.map(exact).reduce(tree.kind === 'series' ? sumOf : latestOf);
}

/** Adds the tree's nodes and returns those at its end. */
function build(tree: Tree, before: readonly number[], nodes: RiskNode[]): readonly number[] {
  if (tree.kind === 'leaf') {
    const after = before.map((node): RiskLink => ({ node, from: 'finish', lagMinutes: 0 }));
    nodes.push({ id: `N${nodes.length}`, duration: threePoint(tree.shape, tree.points), after });
    return [nodes.length - 1];
  }
  if (tree.kind === 'parallel') return tree.parts.flatMap((part) => build(part, before, nodes));
  return tree.parts.reduce((ends, part) => build(part, ends, nodes), before);
}

describe('the simulated chance of being on time', () => {
  it(`is within three standard errors of exact convolution on at least 99 % of ${NETWORKS} random series-parallel networks`, () => {
    // If simulation and error are right, 99.73 % are expected within three standard errors.
    const state = randomState(77);
    const pick = (below: number): number => nextWord(state) % below;
    let within = 0;
    let worst = 0;
    for (let k = 0; k < NETWORKS; k += 1) {
      const tree = randomTree(pick, 3);
      const mass = exact(tree);
      const share = 0.3 + pick(65) / 100;
      let index = 0;
      let chance = mass[0]!;
      while (chance < share) chance += mass[(index += 1)]!;
      const nodes: RiskNode[] = [];
      build(tree, [], nodes);
      const deadlineMinutes = (index + 0.5) * STEP;
      const { onTime } = simulate({ nodes }, { runs: RUNS, seed: k, deadlineMinutes }).deadline!;
      const errors = Math.abs(onTime.probability - chance) / onTime.standardError;
      worst = Math.max(worst, errors);
      if (errors <= 3) within += 1;
    }
    console.log(`${within} of ${NETWORKS} within 3 standard errors; worst ${worst.toFixed(2)}`);
    expect(within).toBeGreaterThanOrEqual(NETWORKS - Math.max(1, Math.floor(NETWORKS / 100)));
  });
});

// Several values made as small as can be by the peer, one after another, each as good as those before it allow.
import { FAR, type Expression, type Library } from './cp-sat.js';
import type { PeerModel } from './model.js';

export interface PeerGoal {
  readonly name: string;
  readonly valueOf: () => Expression;
  /** Part of the time that is left. */
  readonly share: number;
}

export interface Reached {
  readonly name: string;
  readonly value: number;
  /** Nothing is less that is as good in the values before. */
  readonly bound: number;
  readonly proven: boolean;
}

export interface InOrder {
  /** Up to the first for which there was no time, or for which nothing was found. */
  readonly reached: readonly Reached[];
  /** There is no plan at all. */
  readonly none: boolean;
  readonly cpuSeconds: number;
}

export const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Seconds that go by for one of processor time: more than one on a busy machine. */
function wallPerCpu(): number {
  const [at, before] = [performance.now(), cpu()];
  while (cpu() - before < 0.1);
  return Math.max(1, (performance.now() - at) / 100);
}

/**
 * @param seconds Processor time for all, as near as its own measure of work comes to it.
 * @param onFound Told of the best found for each value.
 */
export async function solveInOrder(
  { CpSolver }: Library,
  { model, variables }: PeerModel,
  goals: readonly PeerGoal[],
  seconds: number,
  onFound: (valueOf: (expression: Expression | number) => number) => void,
): Promise<InOrder> {
  const began = cpu();
  const reached: Reached[] = [];
  let perWork = 1;
  let none = false;
  for (const { name, valueOf, share } of goals) {
    const left = seconds - (cpu() - began);
    if (left < 0.05 * seconds) break;
    const value = valueOf();
    model.minimize(value);
    const solver = new CpSolver();
    const before = cpu();
    await solver.solve(model, {
      numWorkers: 1,
      maxDeterministicTime: Math.max(0.02, (left * share) / perWork),
      // Its measure of work can be three times too small.
      maxTimeInSeconds: Math.max(0.02, left * share * wallPerCpu()),
      randomSeed: 1,
    });
    const used = cpu() - before;
    const status = solver.statusName();
    if (solver.deterministic_time > 0.05) perWork = used / solver.deterministic_time;
    none = status === 'INFEASIBLE';
    if (status !== 'OPTIMAL' && status !== 'FEASIBLE') break;
    const found = (expression: Expression | number): number => solver.value(expression);
    onFound(found);
    reached.push({
      name,
      value: found(value),
      bound: Math.ceil(solver.bestObjectiveBound() - 1e-6),
      proven: status === 'OPTIMAL' && reached.every((each) => each.proven),
    });
    model.addLinearConstraint(value, -FAR * 100, found(value));
    model.proto().solutionHint = { vars: [], values: [] };
    for (const each of variables) model.addHint(each, found(each));
  }
  return { reached, none, cpuSeconds: cpu() - began };
}

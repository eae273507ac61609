// The peer's plan: as many pieces placed as can be and of the others as many units, then minutes late, last finish and windows in use, one after another.
import { type Problem, type Visit } from '../../src/planner/fit/index.js';
import { cpSat, type Expression, type Literal, type Model } from './cp-sat.js';
import { cpu, solveInOrder } from './in-order.js';
import { modelOf, visitsOf, type Placed } from './model.js';

/** Minutes late, last finish and windows in use, in this order; pieces and units left out come before them. */
export interface PeerAnswer {
  readonly visits: readonly Visit[];
  /** Leading values of late, finish, windows that it proved. */
  readonly proven: number;
  /** No plan that places as much is less late. */
  readonly leastLate: number;
  readonly cpuSeconds: number;
}

export interface PeerOptions {
  /** Processor time for all, as near as its own measure of work comes to it. */
  readonly seconds: number;
  /** All work must be placed, which is known to be possible; else as much as can be. */
  readonly everything: boolean;
  /** Visits of repeated work in one stretch of usable time; 1 without. */
  readonly visits?: number;
}

export async function solvePeer(
  problem: Problem,
  { seconds, everything, visits: perSlot = 1 }: PeerOptions,
): Promise<PeerAnswer> {
  const library = await cpSat();
  const began = cpu();
  const peer = modelOf(library, problem, { everything, visits: perSlot });
  // What counts windows is given only when it is asked for: it makes the model far larger.
  const goals = [
    ...(everything
      ? []
      : [
          { name: 'out', valueOf: () => peer.out, share: 0.4 },
          { name: 'units', valueOf: () => peer.unitsOut, share: 0.4 },
        ]),
    { name: 'late', valueOf: () => peer.late, share: 0.7 },
    { name: 'finish', valueOf: () => peer.finish, share: 0.6 },
    {
      name: 'windows',
      valueOf: () => windowsUsed(peer.model, problem, peer.placed),
      share: 1,
    },
  ];
  let visits: Visit[] = [];
  const { reached } = await solveInOrder(library, peer, goals, seconds - (cpu() - began), (of) => {
    visits = visitsOf(problem, peer.placed, of);
  });
  return {
    visits,
    proven: reached.filter(({ name, proven }) => proven && name !== 'out' && name !== 'units')
      .length,
    leastLate: Math.max(0, reached.find(({ name }) => name === 'late')?.bound ?? 0),
    cpuSeconds: cpu() - began,
  };
}

/** How many windows are used: a choice of window for each visit. */
function windowsUsed(model: Model, problem: Problem, placed: readonly Placed[]): Expression {
  const used = problem.windows.map(() => model.newBoolVar());
  for (const { task, parts } of placed)
    for (const { start, size, present, slot } of parts) {
      if (slot) {
        if (slot.window >= 0) model.addImplication(present!, used[slot.window]!);
        continue;
      }
      const minutes = size as number;
      const choices = task.slots.flatMap((item): Literal[] => {
        const low = Math.max(item.start, task.earliest);
        if (low > item.end - minutes) return [];
        const here = model.newBoolVar();
        model.addLinearConstraint(start, low, item.end - minutes).onlyEnforceIf(here);
        if (item.window >= 0) {
          // Work that is left out uses none.
          if (present) {
            const counts = model.newBoolVar();
            model.addLinearConstraint(counts.minus(here).minus(present), -1, 1);
            model.addImplication(counts, used[item.window]!);
          } else model.addImplication(here, used[item.window]!);
        }
        return [here];
      });
      model.addExactlyOne(choices);
    }
  return used.reduce<Expression>((total, each) => total.plus(each), model.newIntVar(0, 0));
}

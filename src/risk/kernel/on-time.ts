import { compileNetwork, type CompiledNetwork } from './compile-network.js';
import { familiesOf, FamilyRuns, type Family } from './families.js';
import { heldCase, type WhatIf } from './held-case.js';
import type { LatestStarts } from './latest-starts.js';
import type { RiskNetwork } from './network.js';
import { passForward } from './pass-forward.js';
import { randomState } from './random.js';
import { eachBatch, runSpace } from './run-block.js';
import type { RunSpace } from './run-space.js';
import { TICKS } from './sampling.js';
import { chanceOf, type Chance } from './simulation.js';
import { whatIfs, type WhatIfOptions } from './what-ifs.js';

/** How often each of many changes to one network is on time, of runs that somebody draws. */
export class OnTimeRuns {
  readonly #cases: readonly WhatIf[];
  readonly #families: readonly Family[];
  readonly #familyRuns: FamilyRuns;
  /** In ticks. */
  readonly #deadline: number;
  /** With less work no run is later: a batch that is in time with all of it is in time with each case. */
  readonly #isLess: boolean;
  readonly #hits: Float64Array;

  /**
   * @param known Latest starts of each batch for this deadline, where somebody else works them out.
   * @throws {RangeError} When minutes that are held make no sense.
   */
  constructor(
    network: CompiledNetwork,
    cases: readonly WhatIf[],
    deadlineMinutes: number,
    known?: LatestStarts,
  ) {
    const held = cases.map((item) => heldCase(network, item));
    this.#cases = cases;
    this.#families = familiesOf(network, held);
    this.#deadline = Math.floor(deadlineMinutes * TICKS);
    this.#familyRuns = new FamilyRuns(network, this.#families, held, this.#deadline, known);
    this.#isLess = held.every((item) => item.leftOut);
    this.#hits = new Float64Array(cases.length);
  }

  /** Whether there is any case that batches tell of. */
  get isAsked(): boolean {
    return this.#families.length > 0;
  }

  /** @param space Its times are those of all lengths as drawn, and are so again afterwards. */
  take(space: RunSpace, offset: number, lanesUsed: number): void {
    if (!this.isAsked) return;
    const hits = this.#hits;
    if (this.#isLess && isInTime(space.finish, lanesUsed, this.#deadline)) {
      for (const { cases } of this.#families) for (const at of cases) hits[at]! += lanesUsed;
      return;
    }
    this.#familyRuns.run(space, offset, (at, isOnTime) => {
      for (let lane = 0; lane < lanesUsed; lane += 1) hits[at]! += isOnTime[lane]!;
    });
  }

  /**
   * The chance of each case. What batches do not tell of is gone through by itself.
   *
   * @param options As those by which the batches were drawn, all of them.
   */
  found(network: RiskNetwork, options: WhatIfOptions): readonly Chance[] {
    const found = Array.from(this.#hits, (hits) => chanceOf(hits, options.runs));
    const inFamily = new Set(this.#families.flatMap((family) => family.cases));
    const others = [...this.#cases.keys()].filter((at) => !inFamily.has(at));
    const figures = whatIfs(
      network,
      options,
      others.map((at) => this.#cases[at]!),
    );
    others.forEach((at, k) => (found[at] = figures[k]!.onTime));
    return found;
  }
}

/**
 * The chances of being on time that `whatIfs` gives. Quicker where neighbours in the list change one piece of work again
 * and again, as when it is asked for with one unit, with two and so on.
 *
 * @throws {RangeError} When the options or the network make no sense.
 */
export function chancesOnTime(
  riskNetwork: RiskNetwork,
  options: WhatIfOptions,
  cases: readonly WhatIf[],
): readonly Chance[] {
  if (cases.length === 0) return [];
  const network = compileNetwork(riskNetwork, cases);
  const space = runSpace(network, randomState(options.seed), 1);
  const runs = new OnTimeRuns(network, cases, options.deadlineMinutes);
  if (runs.isAsked)
    eachBatch(network, space, options.runs, (offset, lanesUsed) => {
      passForward(network, space, offset);
      runs.take(space, offset, lanesUsed);
    });
  return runs.found(riskNetwork, options);
}

function isInTime(finish: Int32Array, lanesUsed: number, deadline: number): boolean {
  for (let lane = 0; lane < lanesUsed; lane += 1) if (finish[lane]! > deadline) return false;
  return true;
}

import type { Budget } from './budget.js';
import { Cause } from './learn/cause.js';
import { Nogoods } from './learn/nogoods.js';
import { Questions } from './learn/questions.js';
import { ResourceRule } from './learn/resource-rule.js';
import { Reason, Trail } from './learn/trail.js';
import type { Network } from './network.js';

/** `proven`: nothing is shorter than the best known. `improved`: `starts` is a shorter schedule. */
export type LearnState = 'improved' | 'proven' | 'paused';

/**
 * An exact search that learns from each contradiction a set of facts that cannot all hold.
 *
 * @see Schutt, Feydy, Stuckey and Wallace, "Explaining the cumulative propagator", Constraints 16, 2011, for learning in
 *   project scheduling; from memory, the code is our own.
 */
export class Learner {
  /** The best schedule known; its makespan is `upper`. */
  starts: Int32Array;
  upper: number;
  conflicts = 0;

  private readonly network: Network;
  private readonly trail: Trail;
  private readonly nogoods: Nogoods;
  private readonly questions: Questions;
  private readonly cause: Cause;
  private readonly rules: ResourceRule[] = [];
  /** For each side, what rises with it: other side, distance, other side, distance, ... */
  private readonly arcs: Int32Array[];
  /** For each unknown, the resources it uses. */
  private readonly uses: number[][];
  private readonly due: Uint8Array;
  private read = 0;
  private restarts = 0;
  private mostNogoods = 4000;
  private aim = 0;
  private impossible = false;
  private rootLower = 0;

  /** The end of the project is the unknown after the last activity. */
  private readonly end: number;

  constructor(network: Network, lower: number, upper: number, starts: Int32Array) {
    this.network = network;
    this.starts = starts;
    this.upper = upper;
    const { n, kinds, heads, tails, durations, demand, capacities } = network;
    this.end = n;
    const low = new Int32Array(n + 1);
    const high = new Int32Array(n + 1);
    for (let i = 0; i < n; i++) {
      low[i] = heads[i]!;
      high[i] = upper - tails[i]! - durations[i]!;
    }
    low[n] = lower;
    high[n] = upper;
    this.trail = new Trail(low, high);
    this.nogoods = new Nogoods(this.trail);
    this.questions = new Questions(this.trail);
    this.cause = new Cause(this.trail, this.nogoods, this.questions);
    this.arcs = arcsOf(network);
    this.uses = Array.from({ length: n + 1 }, () => []);
    for (let k = 0; k < kinds; k++) {
      const demands = Int32Array.from({ length: n }, (_, i) => demand[i * kinds + k]!);
      const rule = new ResourceRule(this.trail, durations, demands, capacities[k]!);
      for (const i of rule.tasks) this.uses[i]!.push(k);
      this.rules.push(rule);
    }
    this.due = new Uint8Array(kinds).fill(1);
    for (let side = 0; side < 2 * n + 2; side++) {
      if (!this.followArcs(side)) this.impossible = true;
    }
    this.shorten();
  }

  /** No schedule is shorter than this. */
  get lower(): number {
    if (this.impossible) return this.upper;
    return this.trail.level === 0 ? this.trail.bound[2 * this.end]! : this.rootLower;
  }

  /** Takes over a shorter schedule found elsewhere. */
  adopt(starts: Int32Array, makespan: number): void {
    if (makespan >= this.upper) return;
    this.starts = starts;
    this.upper = makespan;
    this.backTo(0);
    this.shorten();
  }

  /** Searches for `most` contradictions, or until the schedule is shortened or nothing is left. */
  run(most: number, budget: Budget): LearnState {
    const last = this.conflicts + most;
    let restartAt = this.conflicts + 100 * luby(++this.restarts);
    if (!this.atRoot()) return 'proven';
    for (;;) {
      if (!this.propagate()) {
        this.conflicts++;
        if (!this.learn()) return 'proven';
        if (this.isOver(budget)) break;
        continue;
      }
      if (this.conflicts >= last) break;
      if (this.conflicts >= restartAt) {
        restartAt = this.conflicts + 100 * luby(++this.restarts);
        if (!this.atRoot()) return 'proven';
      }
      if (this.isOver(budget)) break;
      if (!this.decide()) return this.improve();
    }
    this.backTo(0);
    return 'paused';
  }

  private isOver(budget: Budget): boolean {
    budget.spend(this.trail.work);
    this.trail.work = 0;
    return budget.expired();
  }

  private improve(): LearnState {
    const { n, durations, tails } = this.network;
    this.starts = Int32Array.from({ length: n }, (_, i) => this.trail.bound[2 * i]!);
    this.upper = 0;
    this.starts.forEach((start, i) => {
      this.upper = Math.max(this.upper, start + durations[i]! + tails[i]!);
    });
    this.backTo(0);
    this.shorten();
    return 'improved';
  }

  /** Asks for a shorter schedule than the best known. At the root. */
  private shorten(): void {
    const side = 2 * this.end + 1;
    if (!this.trail.set(side, 1 - this.upper, Reason.trial, 0, 0)) this.impossible = true;
  }

  /** Draws everything that holds at the root and tidies up; answers false when nothing is possible any more. */
  private atRoot(): boolean {
    this.backTo(0);
    if (this.impossible || !this.propagate()) {
      this.impossible = true;
      return false;
    }
    this.trail.settle();
    this.read = 0;
    this.rootLower = this.trail.bound[2 * this.end]!;
    if (this.nogoods.count > this.mostNogoods) {
      this.nogoods.thin();
      this.mostNogoods += 200;
      if (this.questions.count > 100_000) this.questions.clear();
    }
    this.aim = this.restarts % 3;
    return true;
  }

  private backTo(level: number): void {
    this.trail.backTo(level);
    this.questions.backTo(level);
    this.read = Math.min(this.read, this.trail.size);
  }

  private learn(): boolean {
    const { cause } = this;
    if (this.trail.level === 0 || !cause.trace()) {
      this.impossible = true;
      return false;
    }
    this.backTo(cause.level);
    this.due.fill(0);
    this.nogoods.age();
    this.questions.age();
    const { facts } = cause;
    if (facts.length > 2) this.nogoods.add(facts);
    else if (!this.trail.set(facts[0]! ^ 1, 1 - facts[1]!, Reason.trial, 0, 0)) {
      this.impossible = true;
      return false;
    }
    return true;
  }

  private propagate(): boolean {
    const { trail, due, rules } = this;
    for (;;) {
      while (this.read < trail.size) {
        const side = trail.side[this.read]!;
        // A later rise of the same side is read in its turn and says more.
        if (trail.newest[side] !== this.read++) continue;
        trail.work += 1 + this.arcs[side]!.length;
        if (!this.followArcs(side) || !this.nogoods.follow(side)) return false;
        for (const k of this.uses[side >> 1]!) due[k] = 1;
      }
      const k = due.indexOf(1);
      if (k < 0) return true;
      due[k] = 0;
      if (!rules[k]!.apply()) return false;
    }
  }

  private followArcs(side: number): boolean {
    const { trail } = this;
    const arcs = this.arcs[side]!;
    const bound = trail.bound[side]!;
    for (let at = 0; at < arcs.length; at += 2) {
      const distance = arcs[at + 1]!;
      if (!trail.set(arcs[at]!, bound + distance, Reason.arc, side, distance)) return false;
    }
    return true;
  }

  /** Tries one more fact; answers false when every start is settled. */
  private decide(): boolean {
    const { trail, questions, end } = this;
    if (trail.level === 0 && this.aim < 2) {
      const lower = trail.bound[2 * end]!;
      const most = this.aim === 0 ? lower : (lower + this.upper - 1) >> 1;
      if (most < -trail.bound[2 * end + 1]!) {
        trail.decide(2 * end + 1, -most);
        return true;
      }
    }
    if (questions.next()) {
      const { side, from } = questions;
      const reach = side < 2 * end && this.starts[side >> 1]! >= from;
      if (reach) trail.decide(side, from);
      else trail.decide(side + 1, 1 - from);
      return true;
    }
    trail.work += end;
    let best = -1;
    for (let i = 0; i < end; i++) {
      const low = trail.bound[2 * i]!;
      if (low === -trail.bound[2 * i + 1]!) continue;
      if (best < 0 || low < trail.bound[2 * best]!) best = i;
      else if (
        low === trail.bound[2 * best]! &&
        trail.bound[2 * i + 1]! > trail.bound[2 * best + 1]!
      )
        best = i;
    }
    if (best < 0) return false;
    trail.decide(2 * best + 1, -trail.bound[2 * best]!);
    return true;
  }
}

/** What each rise of a bound pushes along: later starts of successors, earlier latest starts of predecessors. */
function arcsOf(network: Network): Int32Array[] {
  const { n, durations, after, afterLag, tails } = network;
  const arcs: number[][] = Array.from({ length: 2 * n + 2 }, () => []);
  const link = (a: number, b: number, distance: number): void => {
    arcs[2 * a]!.push(2 * b, distance);
    arcs[2 * b + 1]!.push(2 * a + 1, distance);
  };
  for (let i = 0; i < n; i++) {
    after[i]!.forEach((next, k) => link(i, next, durations[i]! + afterLag[i]![k]!));
    link(i, n, durations[i]! + tails[i]!);
  }
  return arcs.map((list) => Int32Array.from(list));
}

/** 1 1 2 1 1 2 4 ...: term `i`, from 1, of the sequence that makes restarts of unknown best length cheap. */
function luby(i: number): number {
  let k = 1;
  while ((1 << k) - 1 < i) k++;
  if ((1 << k) - 1 === i) return 1 << (k - 1);
  return luby(i - (1 << (k - 1)) + 1);
}

import { minutesBetween, MINUTE, type Instant } from '../calendar/index.js';
import type { Placement } from '../fit/types.js';
import {
  needsKey,
  needsOf,
  type AccessWindow,
  type Activity,
  type Link,
  type Needs,
  type Plan,
  type Step,
} from '../model/index.js';
import { maturityCurve } from '../rules/conditions/index.js';
import { layOut, ledgerOf, type Ledger, type PlacedStep } from '../rules/index.js';
import { constant, threePoint, type Distribution, type ThreePoint } from './distribution.js';
import type { RiskLink, RiskNetwork, RiskNode } from './network.js';
import { capacityAt, resourceOrder } from './resource-order.js';
import { grantStep, type HandbackOptions, type PlanEvent } from './types.js';

/** What a node of the network stands for. */
export interface NodeMeaning {
  readonly kind: 'lead-in' | 'work' | 'lead-out';
  /** Step's name or activity's title. */
  readonly name: string;
  readonly activity?: string;
  /** `unit` is the number of the unit in this window, 1 for the first. */
  readonly part?: 'set-up' | 'whole' | 'unit' | 'make-safe';
  readonly unit?: number;
  /** Most likely minutes. */
  readonly minutes: number;
  /** Start of the visit as placed; only on a visit's first node. */
  readonly plannedStart?: Instant;
}

/** A window's work as a network whose zero is the window's start. */
export interface HandbackNetwork {
  readonly network: RiskNetwork;
  readonly meanings: readonly NodeMeaning[];
  /** Planned handback by the arithmetic of the ledgers: last finish of each kind of work + its lead-out. */
  readonly plannedHandback: Instant;
  readonly plannedClear: Instant;
  /** Lead-out minutes of each activity's needs. */
  readonly leadOutOf: ReadonlyMap<string, number>;
  /** Activities of this window that each activity's links wait for. */
  readonly needs: ReadonlyMap<string, readonly string[]>;
}

interface Visit extends Placement {
  readonly activityRow: Activity;
  readonly key: string;
}

type Draft = { -readonly [Key in keyof RiskNode]: RiskNode[Key] } & { after: RiskLink[] };

const finishOf = (node: number): RiskLink => ({ node, from: 'finish', lagMinutes: 0 });

/** The placements that lie in the window, in planned order. @throws {RangeError} When one names no activity. */
function visitsOf(plan: Plan, window: AccessWindow, placements: readonly Placement[]): Visit[] {
  const rows = new Map(plan.activities.map((one) => [one.id, one]));
  return placements
    .filter((one) => one.window === window.id)
    .map((one) => {
      const activityRow = rows.get(one.activity);
      if (!activityRow)
        throw new RangeError(`a placement names activity ${one.activity}: not in the plan`);
      return { ...one, activityRow, key: needsKey(needsOf(activityRow)) };
    })
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

/** Steps by their start, one that starts with another after that one, wherever the list has them. */
function startingOrder(placed: readonly PlacedStep[]): readonly PlacedStep[] {
  const waiting = [...placed].sort((a, b) => a.start - b.start);
  const ordered: PlacedStep[] = [];
  const is = (name: string | undefined) => (other: PlacedStep) => other.step.step === name;
  while (waiting.length > 0) {
    const next = waiting.findIndex(({ beside }) => !waiting.some(is(beside)));
    ordered.push(...waiting.splice(Math.max(0, next), 1));
  }
  return ordered;
}

/** Builds the network node by node; its methods return indices. */
class Builder {
  readonly nodes: Draft[] = [];
  readonly meanings: NodeMeaning[] = [];
  readonly #firstOfStep = new Map<string, number>();
  readonly #plan: Plan;
  readonly #window: AccessWindow;
  readonly #options: HandbackOptions;

  constructor(plan: Plan, window: AccessWindow, options: HandbackOptions) {
    this.#plan = plan;
    this.#window = window;
    this.#options = options;
  }

  add(meaning: NodeMeaning, duration: Distribution, after: readonly RiskLink[]): number {
    this.nodes.push({ id: meaning.name, duration, after: [...after] });
    this.meanings.push(meaning);
    return this.nodes.length - 1;
  }

  spread(minutes: number, low = minutes, high = minutes): Distribution {
    return threePoint(this.#options.distribution ?? 'triangular', {
      low: Math.min(low, minutes),
      likely: minutes,
      high: Math.max(high, minutes),
    });
  }

  events(matches: (event: PlanEvent) => boolean): NonNullable<RiskNode['events']> {
    return (this.#options.events ?? [])
      .filter(matches)
      .map((event) => ({ probability: event.probability, delay: this.delay(event.delay) }));
  }

  delay(points: ThreePoint): Distribution {
    return threePoint(this.#options.distribution ?? 'triangular', points);
  }

  minutesAt(at: Instant): number {
    return minutesBetween(this.#window.start, at);
  }

  /** Steps as `layOut` laid them. The same step met for another kind of work takes the same minutes. */
  steps(
    kind: 'lead-in' | 'lead-out',
    placed: readonly PlacedStep[],
    after: readonly RiskLink[],
    release: (step: Step) => number,
  ): readonly number[] {
    const made: number[] = [];
    const inTime = startingOrder(placed);
    inTime.forEach((one, k) => {
      const { step } = one;
      const links = inTime.slice(0, k).flatMap((other, j): RiskLink[] => {
        if (other.step.step === one.beside)
          return [{ node: made[j]!, from: 'start', lagMinutes: 0 }];
        return one.beside === undefined && other.end <= one.start ? [finishOf(made[j]!)] : [];
      });
      const meaning = { kind, name: step.step, minutes: step.minutes } as const;
      const index = this.add(
        meaning,
        this.spread(step.minutes, step.low, step.high),
        links.length > 0 ? links : after,
      );
      const node = this.nodes[index]!;
      if (release(step) > 0) node.releaseMinutes = release(step);
      const twin = this.#firstOfStep.get(`${kind} ${step.step}`);
      if (twin === undefined) {
        this.#firstOfStep.set(`${kind} ${step.step}`, index);
        const events = this.events(
          ({ step: named, stage }) => named === step.step && (stage ?? kind) === kind,
        );
        if (events.length > 0) node.events = events;
      } else node.sameDurationAs = twin;
      made.push(index);
    });
    return made;
  }

  /** A visit's nodes, first to last. */
  visit(visit: Visit, unitsBefore: number, after: readonly RiskLink[], ledger: Ledger): number[] {
    const { work, title, id } = visit.activityRow;
    const of = { kind: 'work', name: title, activity: id, plannedStart: visit.from } as const;
    const made: number[] = [];
    const next = (meaning: NodeMeaning, duration: Distribution): void => {
      const previous = made.at(-1);
      made.push(this.add(meaning, duration, previous === undefined ? after : [finishOf(previous)]));
    };
    if (work.kind === 'whole') {
      const { low, high } = work.spread ?? {};
      next({ ...of, part: 'whole', minutes: work.minutes }, this.spread(work.minutes, low, high));
    } else {
      const { plannedStart: _, ...later } = of;
      const { low, high } = work.spread ?? {};
      const perUnit = this.spread(work.minutesPerUnit, low, high);
      if (work.setUpMinutes > 0)
        next({ ...of, part: 'set-up', minutes: work.setUpMinutes }, constant(work.setUpMinutes));
      for (let k = 1; k <= (visit.units ?? work.units - work.done); k += 1)
        next(
          {
            ...(made.length === 0 ? of : later),
            part: 'unit',
            unit: unitsBefore + k,
            minutes: work.minutesPerUnit,
          },
          perUnit,
        );
      if (work.makeSafeMinutes > 0)
        next(
          { ...later, part: 'make-safe', minutes: work.makeSafeMinutes },
          constant(work.makeSafeMinutes),
        );
    }
    const closed = ledger.rows
      .filter((row) => (row.kind === 'curfew' || row.kind === 'shift-break') && row.minutes > 0)
      .map((row) => ({ from: this.minutesAt(row.start), to: this.minutesAt(row.end) }));
    for (const index of made) if (closed.length > 0) this.nodes[index]!.closed = closed;
    const events = this.events((event) => event.activity === id);
    const bearer = made.find((index) => this.meanings[index]!.part !== 'set-up');
    if (events.length > 0 && bearer !== undefined && unitsBefore === 0)
      this.nodes[bearer]!.events = events;
    if (made[0] !== undefined) this.nodes[made[0]]!.releaseMinutes = this.#release(visit);
    return made;
  }

  /** Not before its own date, its isolation, or plant that comes later than the window opens. */
  #release(visit: Visit): number {
    const { activityRow: activity, from } = visit;
    const plan = this.#plan;
    const late = activity.resources.some(({ resource, amount }) => {
      const row = plan.resources.find((one) => one.id === resource);
      return row !== undefined && capacityAt(row, this.#window.start, plan.zone) < amount;
    });
    const held = late || this.#options.holdPlannedStarts;
    return Math.max(
      0,
      this.minutesAt(isolationFrom(this.#window, needsOf(activity))),
      activity.notBefore === undefined ? 0 : this.minutesAt(activity.notBefore),
      held ? this.minutesAt(from) : 0,
    );
  }
}

/** When the sections that the work needs may first be isolated. */
function isolationFrom(window: AccessWindow, needs: Needs): Instant {
  return window.isolation
    .filter((one) => needs.isolation.includes(one.section))
    .reduce((latest, one) => Math.max(latest, one.during?.start ?? window.start), window.start);
}

/** Minutes of lead-out for such work, and how many of them are only waiting because its isolation ends early. */
function leadOutMinutes(
  ledger: Ledger,
  placed: readonly PlacedStep[],
): { total: number; idle: number } {
  const steps = Math.max(0, ...placed.map((one) => one.end / MINUTE));
  if (ledger.shortfallMinutes > 0) return { total: steps, idle: 0 };
  const total = ledger.rows
    .filter((row) => row.kind === 'lead-out')
    .reduce((sum, row) => sum + row.minutes, 0);
  return { total, idle: Math.max(0, total - steps) };
}

/**
 * The window's lead-in, visits and lead-out as a network, in the planned order.
 *
 * Each kind of needs has the lead-in and lead-out its own ledger has. A visit waits for its lead-in, for what its
 * activity's links ask for where that is done in this window, and for plant that another visit has before it. Work
 * placed elsewhere counts as done in time. Curfews and shift breaks are those of the ledger, which knows none after
 * its usable time.
 */
export function handbackNetwork(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  options: HandbackOptions,
): HandbackNetwork {
  const visits = visitsOf(plan, window, placements);
  const build = new Builder(plan, window, options);
  const grant = build.add({ kind: 'lead-in', name: grantStep, minutes: 0 }, constant(0), []);
  const late = build.events((event) => event.step === grantStep);
  if (late.length > 0) build.nodes[grant]!.events = late;

  const groups = new Map<string, { needs: Needs; ledger: Ledger; ready: readonly RiskLink[] }>();
  for (const visit of visits) {
    if (groups.has(visit.key)) continue;
    const needs = needsOf(visit.activityRow);
    const opens = isolationFrom(window, needs);
    const notBefore = (step: Step): Instant => (step.when === 'isolation' ? opens : window.start);
    const made = build.steps(
      'lead-in',
      layOut(plan.rules.leadIn, needs, window.start, notBefore),
      [finishOf(grant)],
      (step) => build.minutesAt(notBefore(step)),
    );
    const ready = made.length > 0 ? made.map(finishOf) : [finishOf(grant)];
    groups.set(visit.key, { needs, ledger: ledgerOf(window, needs, plan.rules), ready });
  }

  const curve = plan.curing && maturityCurve(plan.curing);
  // Curing is taken as long as it is from the planned finish.
  const cures = (link: Link, before: Visit | undefined): number =>
    link.cured && curve && before
      ? Math.min(minutesBetween(before.to, curve.readyAt(before.to)), 1e6)
      : 0;

  const nodesOf: number[][] = [];
  const unitsSeen = new Map<string, number>();
  visits.forEach((visit, k) => {
    const { ready, ledger } = groups.get(visit.key)!;
    const before = unitsSeen.get(visit.activity) ?? 0;
    nodesOf[k] = build.visit(visit, before, ready, ledger);
    unitsSeen.set(visit.activity, before + (visit.units ?? 0));
    const first = nodesOf[k][0];
    if (first === undefined) return;
    const earlier = visits.slice(0, k);
    const previous = earlier.findLastIndex((one) => one.activity === visit.activity);
    const follow = (other: number): void => {
      const last = nodesOf[other]?.at(-1);
      if (last !== undefined) build.nodes[first]!.after.push(finishOf(last));
    };
    if (previous >= 0) return follow(previous);
    for (const link of visit.activityRow.after) {
      const same = (one: Visit): boolean => one.activity === link.activity;
      const target =
        nodesOf[link.from === 'start' ? earlier.findIndex(same) : earlier.findLastIndex(same)];
      const node = link.from === 'start' ? target?.[0] : target?.at(-1);
      if (node !== undefined)
        build.nodes[first]!.after.push({
          node,
          from: link.from,
          lagMinutes: link.gapMinutes + cures(link, earlier.findLast(same)),
        });
    }
  });
  const order = resourceOrder(
    visits.map((one) => ({ activity: one.activityRow, from: one.from, to: one.to })),
    plan.resources,
    plan.zone,
  );
  for (const [first, then] of order) {
    const last = nodesOf[first]?.at(-1);
    const next = nodesOf[then]?.[0];
    if (last !== undefined && next !== undefined) build.nodes[next]!.after.push(finishOf(last));
  }

  let plannedHandback = window.start;
  const leadOutOf = new Map<string, number>();
  for (const [key, { needs, ledger }] of groups) {
    const placed = layOut(plan.rules.leadOut, needs, 0);
    const { total, idle } = leadOutMinutes(ledger, placed);
    const own = visits.filter((one) => one.key === key);
    const clear = visits
      .flatMap((one, k) => (one.key === key ? nodesOf[k]!.slice(-1) : []))
      .map(finishOf);
    const made = build.steps('lead-out', placed, clear, () => 0);
    if (idle > 0)
      build.add(
        { kind: 'lead-out', name: 'Isolation given up before the margin begins', minutes: idle },
        constant(idle),
        made.length > 0 ? made.map(finishOf) : clear,
      );
    for (const one of own) leadOutOf.set(one.activity, total);
    plannedHandback = Math.max(
      plannedHandback,
      Math.max(...own.map((one) => one.to)) + total * MINUTE,
    );
  }

  const dated = (options.events ?? []).flatMap((event) =>
    event.at === undefined
      ? []
      : [
          {
            atMinutes: build.minutesAt(event.at),
            probability: event.probability,
            delay: build.delay(event.delay),
          },
        ],
  );
  return {
    network: {
      nodes: build.nodes,
      ...(dated.length > 0 && { datedEvents: dated }),
      ...(options.commonFactor && { commonFactor: build.delay(options.commonFactor) }),
    },
    meanings: build.meanings,
    plannedHandback,
    plannedClear: Math.max(window.start, ...visits.map((one) => one.to)),
    leadOutOf,
    needs: new Map(
      visits.map((one) => [one.activity, one.activityRow.after.map((link) => link.activity)]),
    ),
  };
}

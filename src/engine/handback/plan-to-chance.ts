import { addMinutes, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Plan } from '../../model/index.js';
import { allocate, type AllocateOptions } from '../../planner/search/index.js';
import type { Allocation, ObjectiveValue } from '../../planner/search/types.js';
import { breachesOf } from '../../planner/repair/breaches.js';
import { surelyReaching, windowChance, type WindowChance } from '../../risk/index.js';
import { checked } from '../checked.js';

interface SearchToChance extends AllocateOptions {
  /** Chance wanted of handing back on time in every window used, above 0 and below 1. */
  readonly chance: number;
  readonly runs: number;
  readonly seed: number;
}

/** How a window of the plan stands against the chance wanted. */
export interface WindowReached {
  readonly window: string;
  readonly pOnTime: number;
  readonly standardError: number;
  /** By 2.5 standard errors, so that other runs hardly fall short of it. */
  readonly reached: boolean;
  readonly marginMinutes: number;
  /** Margin in minutes that the chance would need with this work in this window. */
  readonly marginNeeded: number;
}

/** What the chance costs against the plan that is made without. */
export interface ChanceCosts {
  readonly windowsUsed: { readonly without: number; readonly with: number };
  readonly finishesAt: { readonly without: Instant | null; readonly with: Instant | null };
  /** Key dates of which the forecast or the answer differs. */
  readonly keyDates: readonly {
    readonly package: string;
    readonly due: Instant;
    readonly without: Instant | null;
    readonly with: Instant | null;
    readonly metWithout: boolean;
    readonly metWith: boolean;
  }[];
  /** Activities that have a place without and none with. */
  readonly unplaced: readonly string[];
}

/** A plan made to a chance of handing back on time: the chance wanted (0 to 1), the runs, what each window reaches, what it costs. */
export interface PlanToChance {
  readonly allocation: Allocation;
  readonly wanted: number;
  readonly runs: number;
  readonly windows: readonly WindowReached[];
  readonly costs: ChanceCosts;
}

/** Most plans made on the way. Each either widens a margin or gives one up, so few are ever needed. */
const ROUNDS = 8;
/** Runs that a chance rests on while the plan is made, at the least. */
const LEAST_RUNS = 20_000;
/** Where seconds are given, the part of what is left of them that each search may take, and the part with which none is begun. */
const PART = 0.5;
const LEAST = 0.1;

/**
 * A plan in which every window that is used hands back on time with at least the chance wanted, by the simulation of
 * `handback`. Where a window falls short its required margin is widened by what is missing and the plan made anew.
 *
 * A window in which widening would leave work without a place keeps its margin: it is named, not reached, with the
 * margin it would need. So does one that holds what is kept (`options.keep`), which stays to the minute.
 *
 * @throws {RangeError} When the chance is not above 0 and below 1.
 */
export function planToChance(plan: Plan, options: SearchToChance): PlanToChance {
  const { chance, seed, shouldStop, keep = [] } = options;
  if (!(chance > 0 && chance < 1)) throw new RangeError(`a chance of ${chance}`);
  const runs = Math.max(options.runs, LEAST_RUNS);
  const aim = Math.min(1 - 1 / runs, surelyReaching(chance, runs));
  const required = plan.rules.margin.minutes;
  const figures = ({ placements }: Allocation): ReadonlyMap<string, WindowChance> =>
    new Map(
      usedBy(placements, plan).map((window) => [
        window.id,
        windowChance(plan, window, placements, { seed, runs }, aim),
      ]),
    );

  const { clock, seconds = Infinity } = options;
  const began = clock();
  const left = (): number => seconds - (clock() - began) / 1000;
  const isOver = (): boolean => seconds !== Infinity && left() <= LEAST * seconds;
  const planned = (of: Plan): Allocation =>
    allocate(of, seconds === Infinity ? options : { ...options, seconds: PART * left() });
  const without = planned(plan);
  const placedWithout = new Set(without.placements.map((placement) => placement.activity));
  const wider = new Map<string, number>();
  const givenUp = new Set<string>();
  const broken = new Set(breachesOf(plan, keep).map((breach) => breach.text));
  let best = without;
  let found = figures(best);
  for (let round = 0; round < ROUNDS; round += 1) {
    const short = [...found].filter(
      ([id, figure]) => !givenUp.has(id) && figure.onTime.probability < aim,
    );
    if (short.length === 0 || shouldStop?.(round / ROUNDS) || isOver()) break;
    for (const [id, figure] of short)
      wider.set(id, Math.max((wider.get(id) ?? 0) + 1, figure.marginNeededMinutes - required));
    // What is kept stays to the minute: a window that could not hold it any more keeps its margin.
    for (const id of [...wider.keys()]) {
      const here = keep.filter((placement) => placement.window === id);
      if (here.length === 0) continue;
      const cut = shortened(plan, new Map([[id, wider.get(id)!]]));
      if (breachesOf(cut, keep).every((breach) => broken.has(breach.text))) continue;
      wider.delete(id);
      givenUp.add(id);
    }
    if (short.every(([id]) => givenUp.has(id))) continue;
    const next = planned(shortened(plan, wider));
    const lost = lostBy(next, without);
    if (lost.size === 0) {
      best = next;
      found = figures(best);
      continue;
    }
    // Work finds no place: the windows that held it as the plan stood cannot spare the minutes.
    const holding = best.placements.filter(
      (placement) => lost.has(placement.activity) && wider.has(placement.window ?? ''),
    );
    const blamed =
      holding.length > 0 ? holding.map((placement) => placement.window!) : short.map(([id]) => id);
    for (const id of blamed) {
      wider.delete(id);
      givenUp.add(id);
    }
    if (wider.size > 0) {
      const again = planned(shortened(plan, wider));
      if (lostBy(again, without).size === 0) {
        best = again;
        found = figures(best);
      }
    } else {
      best = without;
      found = figures(best);
    }
  }
  return {
    allocation: checked(
      plan,
      best === without ? best : { ...best, certificate: certificateOf(best, without) },
    ),
    wanted: chance,
    runs,
    windows: [...found].map(([window, figure]) => ({
      window,
      pOnTime: figure.onTime.probability,
      standardError: figure.onTime.standardError,
      reached: figure.onTime.probability >= aim,
      marginMinutes: figure.marginMinutes,
      marginNeeded: figure.marginNeededMinutes,
    })),
    costs: costsOf(best, without, placedWithout),
  };
}

function usedBy(placements: Allocation['placements'], plan: Plan): readonly AccessWindow[] {
  const used = new Set(placements.map((placement) => placement.window));
  return plan.windows.filter((window) => used.has(window.id));
}

/** Activities without a place, in full or in part, that have one in the other plan. */
function lostBy(allocation: Allocation, other: Allocation): ReadonlySet<string> {
  const before = new Set(other.unplaced.map(({ activity }) => activity));
  const units = (of: Allocation, id: string): number =>
    of.placements
      .filter(({ activity }) => activity === id)
      .reduce((sum, { units: some }) => sum + (some ?? 1), 0);
  return new Set(
    allocation.unplaced
      .map(({ activity }) => activity)
      .filter((id) => !before.has(id) || units(allocation, id) < units(other, id)),
  );
}

/** The plan with windows that end earlier by so many minutes: so their margin is wider by as many. */
function shortened(plan: Plan, wider: ReadonlyMap<string, number>): Plan {
  return {
    ...plan,
    windows: plan.windows.map((window) => {
      const minutes = wider.get(window.id) ?? 0;
      if (minutes <= 0) return window;
      const end = Math.max(window.start, addMinutes(window.end, -minutes));
      return { ...window, end };
    }),
  };
}

/**
 * What is known of a plan with wider margins: whatever holds it back, no plan is better than the bound without them, and
 * it is the best where it reaches that bound.
 */
function certificateOf(allocation: Allocation, without: Allocation): Allocation['certificate'] {
  const mostPlaced =
    without.certificate.mostPlaced && allocation.unplaced.length === without.unplaced.length;
  let allBefore = mostPlaced;
  const objectives = allocation.certificate.objectives.map((each): ObjectiveValue => {
    const bound = without.certificate.objectives.find(({ name }) => name === each.name)!;
    const proven = allBefore && each.value <= bound.lowerBound;
    const known = allBefore ? bound.lowerBound : 0;
    allBefore &&= each.value === bound.value;
    return { ...each, lowerBound: Math.min(known, each.value), proven };
  });
  const [first] = objectives as [ObjectiveValue, ...ObjectiveValue[]];
  return {
    ...allocation.certificate,
    mostPlaced,
    objectives,
    lowerBound: first.lowerBound,
    objective: first.value,
    proven: first.proven,
    text: first.proven
      ? 'proven best for its first aim, with margins widened for the chance wanted'
      : 'best found with margins widened for the chance wanted; not proven best',
  };
}

function costsOf(
  allocation: Allocation,
  without: Allocation,
  placedWithout: ReadonlySet<string>,
): ChanceCosts {
  const own = new Map(allocation.keyDates.map((each) => [each.package, each]));
  return {
    windowsUsed: { without: without.windowsUsed, with: allocation.windowsUsed },
    finishesAt: { without: without.finishesAt, with: allocation.finishesAt },
    keyDates: without.keyDates.flatMap((before) => {
      const now = own.get(before.package)!;
      if (now.forecast === before.forecast && now.met === before.met) return [];
      return [
        {
          package: before.package,
          due: before.due,
          without: before.forecast,
          with: now.forecast,
          metWithout: before.met,
          metWith: now.met,
        },
      ];
    }),
    unplaced: allocation.unplaced
      .map(({ activity }) => activity)
      .filter((id) => placedWithout.has(id)),
  };
}

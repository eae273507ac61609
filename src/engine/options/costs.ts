import { addMinutes, lengthMinutes, minutesBetween } from '../../calendar/index.js';
import type { Placement } from '../../planner/fit/types.js';
import type { AccessWindow, Phrase, Plan, PriceBook, Train } from '../../model/index.js';
import { costCurve, type CostCurve } from '../../price/index.js';
import {
  handbackNetwork,
  nearestRank,
  outlookOf,
  pairedFinishes,
  marginVerdictOf,
  windowVerdictOf,
  type HandbackNetwork,
  type HandbackOptions,
  type PairedCase,
} from '../../risk/index.js';
import type { OptionHandback } from './types.js';

/** A plan of one window's work that is to be simulated and priced. */
export interface WindowWork {
  readonly plan: Plan;
  readonly trains: readonly Train[];
  readonly window: AccessWindow;
  readonly placements: readonly Placement[];
  /** Told apart from the first window's steps, whose draws are another night's. */
  readonly night?: string;
  /** Units of each activity that are done before this window, so that a unit keeps its draws wherever it is done. */
  readonly unitsBefore?: ReadonlyMap<string, number>;
}

/** What is drawn at random in one window, and its cost, run by run. */
export interface WindowRuns {
  readonly handback: OptionHandback;
  /** Minutes from the window's start to handback. */
  readonly finishes: Float64Array;
  /** Smallest coins. */
  readonly costs: readonly number[];
  /** What those costs leave out. */
  readonly notPriced: readonly Phrase[];
}

/** What simulating and pricing hang on beside the work. */
export interface RunSettings {
  readonly prices: PriceBook;
  readonly holidays: readonly string[];
  readonly risk: HandbackOptions;
}

/** The network of a window's work with a name for what each node draws. */
export function caseOf(
  work: WindowWork,
  risk: HandbackOptions,
): { built: HandbackNetwork } & PairedCase {
  const built = handbackNetwork(work.plan, work.window, work.placements, risk);
  const names = built.meanings.map((meaning) => {
    if (meaning.activity === undefined)
      return `${work.night ?? ''} ${meaning.kind} ${meaning.name}`;
    const before = work.unitsBefore?.get(meaning.activity) ?? 0;
    return `${meaning.activity} ${meaning.part} ${meaning.unit === undefined ? '' : before + meaning.unit}`;
  });
  return { built, network: built.network, names };
}

/** A seed for each window, so that two nights do not share their draws. */
export function seedOf(seed: number, window: string): number {
  let mixed = 0x811c9dc5 ^ seed;
  for (const letter of window) mixed = Math.imul(mixed ^ letter.codePointAt(0)!, 0x01000193) >>> 0;
  return mixed >>> 1;
}

/** Simulates several ways to do one window's work with the same draws, and prices each. Null when stopped. */
export function runWindows(
  works: readonly WindowWork[],
  settings: RunSettings,
  seed: number,
): readonly WindowRuns[] | null {
  const cases = works.map((work) => caseOf(work, settings.risk));
  const { runs, shouldStop } = settings.risk;
  const found = pairedFinishes(cases, { seed, runs, ...(shouldStop && { shouldStop }) });
  return (
    found &&
    works.map((work, i): WindowRuns => {
      const finishes = found[i]!;
      return {
        finishes,
        handback: handbackOf(work, cases[i]!.built, finishes),
        ...costsOf(work, finishes, settings),
      };
    })
  );
}

/** The cost of each run's overrun in smallest coins. A minute begun is a minute late. */
function costsOf(
  work: WindowWork,
  finishes: ArrayLike<number>,
  settings: Pick<RunSettings, 'prices' | 'holidays'>,
): Pick<WindowRuns, 'costs' | 'notPriced'> {
  const booked = lengthMinutes(work.window);
  const overruns = Array.from(finishes, (at) => Math.max(0, Math.ceil(at - booked)));
  const most = overruns.reduce((top, value) => Math.max(top, value), 0);
  const { minor, notPriced } = overrunCurve(work, settings, most);
  return { costs: overruns.map((minutes) => minor[minutes]!), notPriced };
}

/** What each overrun of a window's work costs, up to so many minutes. */
export function overrunCurve(
  { window, plan, trains, placements }: WindowWork,
  { prices, holidays }: Pick<RunSettings, 'prices' | 'holidays'>,
  most: number,
): CostCurve {
  return costCurve(
    {
      window,
      prices,
      trains,
      holidays,
      resources: plan.resources,
      activities: plan.activities,
      placements,
      // What the plan itself misses is a part of the option; a run counts what its overrun adds.
      keyDates: 'overrun',
      // What is left over is priced by the option itself.
      lostUnits: { units: 0, pricePerUnit: '0' },
    },
    most,
  );
}

/** Margin and chance of a window from its network and its runs. */
function handbackOf(
  { window, plan }: WindowWork,
  built: HandbackNetwork,
  finishes: Float64Array,
): OptionHandback {
  const sorted = Float64Array.from(finishes).sort();
  const at = (share: number): number =>
    addMinutes(window.start, Math.ceil(nearestRank(sorted, share)));
  const marginMinutes = minutesBetween(built.plannedHandback, window.end);
  const requiredMinutes = plan.rules.margin.minutes;
  const { onTime } = outlookOf(sorted, lengthMinutes(window));
  return {
    window: window.id,
    bookedEnd: window.end,
    plannedHandback: built.plannedHandback,
    marginMinutes,
    requiredMinutes,
    verdict: windowVerdictOf(
      marginVerdictOf(marginMinutes, requiredMinutes),
      onTime.probability,
      plan.rules.handback?.chance ?? null,
    ),
    onTime,
    p50: at(0.5),
    p80: at(0.8),
    p95: at(0.95),
  };
}

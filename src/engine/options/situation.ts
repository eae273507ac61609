import type { Placement } from '../../planner/fit/types.js';
import type {
  AccessWindow,
  Activity,
  Plan,
  PlanDocument,
  PriceBook,
  Train,
} from '../../model/index.js';
import type { HandbackOptions } from '../../risk/index.js';
import { verify } from '../../verify/index.js';
import { frozenPieces } from '../frozen.js';
import { namedWindow } from '../named-window.js';
import { sitePlan } from '../site/site-plan.js';
import type { Progress } from '../types.js';
import type { RunSettings, WindowWork } from './costs.js';
import type { SearchTime } from './plans.js';
import type { OptionsRequest } from './types.js';

/** The clock, and the way to stop. */
export interface OptionsTools {
  readonly clock: () => number;
  readonly stopped: () => boolean;
  readonly onProgress: (progress: Progress) => void;
}

/** What every option of one window starts from. */
export interface Situation {
  readonly request: OptionsRequest;
  readonly document: PlanDocument;
  readonly plan: Plan;
  readonly trains: readonly Train[];
  readonly prices: PriceBook;
  readonly holidays: readonly string[];
  readonly window: AccessWindow;
  readonly risk: HandbackOptions;
  readonly time: SearchTime;
  /** As planned, simulated and priced: what the others are held against. */
  readonly planned: WindowWork;
  /** What the independent check finds of it, each fault as text of JSON. */
  readonly known: ReadonlySet<string>;
}

/**
 * What the options of the window asked about start from.
 *
 * @throws {RangeError} When the document has no price book or no such window, or nothing is planned in it.
 */
export function situationOf(
  document: PlanDocument,
  request: OptionsRequest,
  tools: OptionsTools,
): Situation {
  const { prices } = document;
  if (!prices) throw new RangeError('the plan has no price book');
  const { plan, trains } = sitePlan(document);
  const window = namedWindow(plan, request.window);
  const { placements } = request.allocation;
  if (!placements.some((placement) => placement.window === window.id))
    throw new RangeError(`no work is planned in ${window.id}, so there is nothing to compare`);
  const planned: WindowWork = { plan, trains, window, placements };
  const { seed, runs, events, commonFactor, distribution } = request;
  return {
    request,
    document,
    plan,
    trains,
    prices,
    holidays: document.holidays ?? [],
    window,
    planned,
    known: new Set(
      verify(plan, { placements, unplaced: request.allocation.unplaced }).map((fault) =>
        JSON.stringify(fault),
      ),
    ),
    risk: {
      seed,
      runs,
      shouldStop: tools.stopped,
      ...(events && { events }),
      ...(commonFactor && { commonFactor }),
      ...(distribution && { distribution }),
    },
    time: {
      effort: request.effortPerOption ?? 0.5,
      seed: 1,
      clock: tools.clock,
      shouldStop: tools.stopped,
      frozen: frozenPieces(document, plan).filter((piece) => piece.window !== window.id),
    },
  };
}

/** What simulating and pricing hang on beside the work. */
export function settingsOf(at: Situation): RunSettings {
  return { prices: at.prices, holidays: at.holidays, risk: at.risk };
}

/** @throws {RangeError} When the plan has no such activity. */
export function activityOf(at: Situation, id: string): Activity {
  const found = at.plan.activities.find((activity) => activity.id === id);
  if (!found) throw new RangeError(`a placement names activity ${id}: not in the plan`);
  return found;
}

/** What is planned outside the window. */
export const elsewhere = (at: Situation): readonly Placement[] =>
  at.planned.placements.filter((placement) => placement.window !== at.window.id);

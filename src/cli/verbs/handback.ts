import type { Instant } from '../../calendar/index.js';
import { cutOffCalendar } from '../../engine/handback/cut-off-calendar.js';
import { handbackNotes } from '../../engine/handback/handback-notes.js';
import { withinSteps } from '../../engine/handback/handback-steps.js';
import { handbackOf } from '../../engine/handback/handback.js';
import type { AccessWindow, Decisions, Note, Placement, Plan } from '../../model/index.js';
import { notPlacedIn, type Actual } from '../../risk/index.js';
import type { Answer } from '../answer.js';
import type { HandbackAnswer } from '../answers/handback.js';
import type { Arguments } from '../arguments.js';
import { handbackJson } from './handback-json.js';
import { handbackText } from './handback-text.js';
import { noShiftNotes } from './no-shift-notes.js';
import { inShift } from '../read/shift-windows.js';
import type { WindowOutlook } from './window-outlook.js';
import { planLines, planOfWork, standingWork } from '../plan-of-work.js';
import type { GivenFile } from '../read/read-plan.js';
import { writeFileOf } from '../write-file.js';

/** The moment of a forecast during the shift, and the records by then. */
export interface Seen {
  readonly at: Instant;
  readonly actuals: readonly Actual[];
  /** Activities begun according to the logs of earlier shifts. */
  readonly begunBefore?: readonly string[];
}

/** Files read besides the plan. */
export interface HandbackFiles {
  /** The given plan of work; absent: one is made. */
  readonly given?: GivenFile | undefined;
  /** Absent: as planned. */
  readonly seen?: Seen;
  /** Simulation steps for all windows together. */
  readonly steps?: number;
}

/** Enough for 10,000 runs of about 1,500 typical windows. */
const STEPS = 6_000_000_000;

interface Outlooks {
  readonly all: readonly WindowOutlook[];
  /** Windows left out because the steps were used up. */
  readonly past: readonly AccessWindow[];
}

/**
 * The handback outlook of windows that take work, within the step limit. With `seen`, only of those open at that
 * moment.
 */
function outlooks(
  plan: Plan,
  placements: readonly Placement[],
  { seed, runs }: Pick<Arguments, 'seed' | 'runs'>,
  decisions: Decisions,
  { seen, steps = STEPS }: HandbackFiles,
): Outlooks {
  const used = new Set(placements.map((placement) => placement.window));
  const open = seen
    ? inShift(plan.windows, seen.at, (window) => used.has(window.id))
    : plan.windows.filter((window) => used.has(window.id));
  const { windows, past } = withinSteps(plan, open, placements, runs, steps);
  const byId = new Map(windows.map((window) => [window.id, window]));
  const request = {
    placements,
    windows: [...byId.keys()],
    seed,
    runs,
    ...decisions,
    ...seen,
  };
  const all = handbackOf(plan, request).map((result) => ({
    window: byId.get(result.window)!,
    result,
  }));
  return { all, past };
}

function pastNotes(past: readonly AccessWindow[]): readonly Note[] {
  if (past.length === 0) return [];
  const names = past.map(({ id }) => id).join(', ');
  return [
    {
      code: 'not-worked-out',
      text: `Not worked out, since the windows before them took all the effort: ${names}. Nothing is known of their handback; ask again with fewer --runs.`,
    },
  ];
}

/**
 * `handback`: margin, cut-off times, chance of handing back on time and verdict of every window that takes work; during
 * the shift also the advice.
 *
 * @param now Time stamp of the calendar file, if requested.
 */
export function handback(
  plan: Plan,
  asked: Arguments,
  decisions: Decisions,
  now: Instant,
  files: HandbackFiles = {},
): Answer<HandbackAnswer> {
  const { given, seen } = files;
  const work = given ? standingWork(plan, given) : planOfWork(plan, asked);
  const { placements } = work.allocation;
  const { all, past } = outlooks(plan, placements, asked, decisions, files);
  const results = all.map((outlook) => outlook.result);
  if (asked.calendar !== undefined)
    writeFileOf('calendar', asked, cutOffCalendar(results, plan.windows, now, planLines(work)[0]));
  // Windows without planned work have no outlook, so work that is fixed to them is listed separately.
  const listed = new Set([...results.map((result) => result.window), ...past.map(({ id }) => id)]);
  const notPlaced = plan.windows
    .filter((window) => !listed.has(window.id))
    .flatMap((window) =>
      notPlacedIn(plan, window, placements).map((item) => ({ window: window.id, ...item })),
    );
  return {
    json: {
      plan: work.plan,
      ...(given && { broken: work.broken }),
      windows: all.map(({ window, result }) => handbackJson(window, result)),
      notPlaced,
      ...(past.length > 0 && { notWorkedOut: past.map(({ id }) => id) }),
    },
    text: [...planLines(work), '', ...handbackText(plan, all, notPlaced, asked.calendar)],
    notes: [
      ...work.notes,
      ...pastNotes(past),
      ...(seen ? noShiftNotes(plan, listed, seen.at) : []),
      ...handbackNotes(plan, results),
    ],
  };
}

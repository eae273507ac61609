import { addMinutes, lengthMinutes, minutesBetween, type Instant } from '../calendar/index.js';
import type { Placement } from '../planner/fit/types.js';
import { because, type AccessWindow, type Plan } from '../model/index.js';
import { conditionedOn, type Conditioned } from './shift/conditioned.js';
import { adviceOf, type Outlook } from './shift/advice.js';
import { begunBefore } from './shift/begun-before.js';
import { chanceLimits, RunsBackward, type ChanceLimit } from './limits/chance-limits.js';
import { doubtsOf } from './shift/doubts.js';
import { cutOffsOf, decisionsOf, groupsOf, startNodes, type NodeState } from './limits/cut-offs.js';
import { keptAfter, latestTimes } from './limits/latest-times.js';
import { leftOpen } from './line/left-open.js';
import {
  chancesWithout,
  leftOut,
  unitCounts,
  unitOutlooks,
  type LessWork,
} from './shift/less-work.js';
import { withPlanRisk } from './plan-risk.js';
import { handbackNetwork, type HandbackNetwork } from './handback-network/handback-network.js';
import { forwardPass } from './kernel/network.js';
import { goPointTimes } from './limits/go-points.js';
import { guardingSteps } from './limits/guarding-steps.js';
import { helpsMost, HelpRuns, triedGroups } from './kernel/helps-most.js';
import type { WhatIf } from './kernel/held-case.js';
import { OnTimeRuns } from './kernel/on-time.js';
import { nearestRank, outlookOf, simulate, type Alongside } from './kernel/simulation.js';
import { sortedJson, stampOfText } from './shift/stamp.js';
import { isClose, marginVerdictOf, windowVerdictOf } from './verdict.js';
import {
  defaultConfidence,
  handedBackStep,
  type Actual,
  type AskedBack,
  type HandbackOptions,
  type HandbackResult,
  type HandbackSimulation,
  type CutOff,
  type LiveForecast,
} from './types.js';
import { sayLive } from './shift/live-sentences.js';

/** Most runs of each what-if: of those of the window's own simulation, the first. */
const WHAT_IF_RUNS = 10_000;

/** Handback in minutes after the window's start when everything takes its most likely time. */
export function likelyHandback(built: HandbackNetwork): number {
  const times = forwardPass(built.network.nodes, (index) => built.meanings[index]!.minutes);
  return times.reduce((latest, item) => Math.max(latest, item.finish), 0);
}

/**
 * @param alongside What else is asked of the same runs, where they are no more than are asked of a what-if.
 * @param changes What that changes.
 */
function simulationOf(
  built: HandbackNetwork,
  { plan, window, options }: Asked,
  alongside: Alongside,
  changes: readonly WhatIf[],
): HandbackSimulation {
  const { seed, runs, shouldStop, onProgress } = options;
  const deadlineMinutes = lengthMinutes(window);
  const at = (minutes: number): Instant => addMinutes(window.start, Math.ceil(minutes));
  const groups = [...groupsOf(built.meanings).values()];
  const subjectOf = (group: readonly number[]) => {
    const { kind, name, activity } = built.meanings[group[0]!]!;
    return { kind, name, ...(activity !== undefined && { activity }) };
  };
  // Nobody is urged to be quick at what guards people.
  const guards = guardingSteps(plan.rules);
  const urged = groups.filter(([index]) => {
    const { kind, name } = built.meanings[index]!;
    return !guards(kind, name);
  });
  const tried = triedGroups(built.network, urged);
  let helps: HelpRuns | undefined;
  const result = simulate(built.network, {
    seed,
    runs,
    deadlineMinutes,
    ...(shouldStop && { shouldStop }),
    ...(onProgress && { onProgress }),
    ...(runs <= WHAT_IF_RUNS && {
      changes: [...changes, ...(tried ?? []).map(({ least }) => least)],
      alongside: (network, space) => {
        const others = alongside(network, space);
        helps = tried ? new HelpRuns(network, tried, deadlineMinutes) : undefined;
        return (offset, lanesUsed, first) => {
          others(offset, lanesUsed, first);
          helps?.take(space, offset, lanesUsed);
        };
      },
    }),
  });
  const { quantiles } = result;
  const helped =
    result.deadline!.onTime.probability === 1
      ? []
      : helpsMost(
          built.network,
          { seed, runs: Math.min(runs, WHAT_IF_RUNS), deadlineMinutes },
          result.criticality,
          urged,
          result.stopped || helps?.isGivenUp ? undefined : helps,
        );
  return {
    runs: result.runs,
    seed,
    stopped: result.stopped,
    outlook: result.deadline!,
    p50: at(quantiles.p50),
    p80: at(quantiles.p80),
    p90: at(quantiles.p90),
    p95: at(quantiles.p95),
    handbackMinutes: result.finishMinutes,
    criticality: groups.map((group) => ({
      ...subjectOf(group),
      share: Math.max(...group.map((index) => result.criticality[index]!)),
    })),
    helpsMost: helped.map(({ group, probabilityGain, meanGainMinutes }) => ({
      ...subjectOf(urged[group]!),
      probabilityGain,
      meanGainMinutes,
    })),
  };
}

function inputsStamp(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  options: HandbackOptions,
): string {
  const here = placements.filter((placement) => placement.window === window.id);
  const named = new Set(here.map((placement) => placement.activity));
  const { shouldStop: _, onProgress: __, ...asked } = options;
  const work = plan.activities.filter((activity) => named.has(activity.id));
  const texts = [window, here, work].map(sortedJson);
  return stampOfText(`[${[...texts, restText(plan), sortedJson(asked)].join(',')}]`);
}

/** The text of what all windows of a plan share, which are asked about one after another. */
const restTexts = new WeakMap<Plan, string>();

function restText(plan: Plan): string {
  let text = restTexts.get(plan);
  if (text === undefined) {
    const { activities: _, windows: __, ...rest } = plan;
    restTexts.set(plan, (text = sortedJson(rest)));
  }
  return text;
}

interface Asked {
  readonly plan: Plan;
  readonly window: AccessWindow;
  readonly options: HandbackOptions;
}

/**
 * How a window stands against its booked end: margin, cut-off times, chance of handing back on time; and with `at`,
 * all of it as it stands at that moment of the shift.
 *
 * Placements of other windows are passed over: work done there counts as done in time. The simulation keeps the
 * planned order of visits on shared plant and at a place that one of them has to itself. Curfews are known up to a day
 * after the booked end.
 *
 * Where the shift has agreed to an earlier end, that is the end of all of it from then on; the work stays planned as it was.
 *
 * @throws {RangeError} When a placement names no activity of the plan, or an option makes no sense.
 */
export function handback(
  given: Plan,
  booked: AccessWindow,
  placements: readonly Placement[],
  asked: HandbackOptions,
): HandbackResult {
  const plan = withNames(given);
  const options = withPlanRisk(plan.rules, booked, asked);
  const built = handbackNetwork(plan, booked, placements, options);
  const window = asAgreed(booked, options);
  const requiredMinutes = plan.rules.margin.minutes;
  const chanceWanted = options.confidence ?? null;
  const confidence = chanceWanted ?? defaultConfidence;
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`a confidence of ${confidence}`);
  const commitments = options.commitments ?? [];
  const marginMinutes = minutesBetween(built.plannedHandback, window.end);
  const actuals = options.actuals ?? [];
  const now =
    options.at === undefined ? undefined : conditionedOn(built, booked, options, options.at);
  const states = now?.states ?? built.meanings.map((): NodeState => 'to-come');
  const latest = latestTimes(built, window, requiredMinutes, commitments);
  const whatIfRuns = Math.min(options.runs, WHAT_IF_RUNS);
  const limitOptions = {
    seed: options.seed,
    runs: whatIfRuns,
    deadlineMinutes: lengthMinutes(window),
    chance: confidence,
    after: keptAfter(built, commitments),
  };
  const startsAsked = startNodes(built, window);
  // During the shift the limits are of the plan, and the simulation of what is left.
  const left = now?.built ?? built;
  const counts = unitCounts(left, states, now?.assumed ?? new Set());
  let limitRuns: RunsBackward | undefined;
  let unitRuns: OnTimeRuns | undefined;
  const cases = counts.map(({ dropped }) => leftOut(dropped));
  const alongside: Alongside = (network, space) => {
    const limits = now ? undefined : new RunsBackward(network, limitOptions, startsAsked);
    const { deadlineMinutes } = limitOptions;
    const units = new OnTimeRuns(network, cases, deadlineMinutes, limits?.ofDeadline);
    limitRuns = limits;
    unitRuns = units;
    return (offset, lanesUsed, first) => {
      limits?.take(space, offset, lanesUsed, first);
      units.take(space, offset, lanesUsed);
    };
  };
  const simulation = simulationOf(left, { plan, window, options }, alongside, cases);
  const limits: ReadonlyMap<number, ChanceLimit> =
    limitRuns && !simulation.stopped
      ? limitRuns.found()
      : chanceLimits(built.network, limitOptions, startsAsked);
  const cutOffs = cutOffsOf(built, window, latest, states, limits);
  const decisions = decisionsOf(built, window, latest, commitments);
  const { onTime } = simulation.outlook;
  // During the shift the one verdict is of what is left, not of what was planned.
  const forecast = now
    ? likelyHandback(now.built)
    : minutesBetween(window.start, built.plannedHandback);
  const marginVerdict = marginVerdictOf(lengthMinutes(window) - forecast, requiredMinutes);
  const lessWork: LessWork = {
    seed: options.seed,
    runs: whatIfRuns,
    confidence,
    own: onTime,
    ownRuns: simulation.runs,
  };
  const unitChances = chancesWithout(
    left,
    window,
    lessWork,
    counts.map(({ dropped }) => dropped),
    simulation.stopped ? undefined : unitRuns,
  );
  const reached = nearestRank(simulation.handbackMinutes, confidence);
  return {
    window: window.id,
    status: window.status,
    inputsStamp: inputsStamp(given, booked, placements, options),
    bookedEnd: window.end,
    bookedBefore: window.end < booked.end ? booked.end : null,
    plannedClear: built.plannedClear,
    leadOutMinutes: minutesBetween(built.plannedClear, built.plannedHandback),
    plannedHandback: built.plannedHandback,
    marginMinutes,
    requiredMinutes,
    marginVerdict,
    verdict: windowVerdictOf(marginVerdict, onTime.probability, chanceWanted, simulation.runs),
    chanceWanted,
    chanceIsClose:
      chanceWanted !== null && isClose(onTime.probability, chanceWanted, simulation.runs),
    confidence,
    marginForChanceMinutes: Math.max(0, Math.ceil(reached - forecast)),
    cutOffs,
    decisions,
    goPoints: goPointTimes(options.goPoints ?? [], window, cutOffs, decisions),
    simulation,
    units: unitOutlooks(counts, unitChances, confidence),
    ...leftOpen(plan, window, placements, now && actuals),
    live: now && options.at !== undefined ? liveOf(now, options.at, lessWork) : null,
  };

  function liveOf(seen: Conditioned, at: Instant, asked: LessWork): LiveForecast {
    const before = begunBefore(plan, booked, placements, options);
    const handedBackAt = seenAt(actuals, at)?.finishedAt ?? null;
    const margin = lengthMinutes(window) - forecast;
    const toCome = cutOffs.filter((cutOff) => cutOff.state === 'to-come');
    const ahead = toCome.filter((off) => off.latestStart >= at);
    return {
      at,
      handedBackAt,
      askedBack: handedBackAt === null ? askedBackOf(seen, at, asked, before) : null,
      doubts: doubtsOf(plan, window, booked, seen, actuals, at),
      forecastHandback: addMinutes(window.end, -margin),
      marginLeftMinutes: margin,
      marginVerdict,
      verdict: windowVerdictOf(marginVerdict, onTime.probability, chanceWanted, simulation.runs),
      next: toCome[0] ?? null,
      nextCutOff: earliest(ahead),
      passedCutOffs: toCome.filter((off) => off.latestStart < at),
      beyondEstimate: seen.beyondEstimate,
      ...(handedBackAt === null
        ? adviceOf(plan, seen, window, asked, at, before)
        : isOver(
            minutesBetween(handedBackAt, window.end),
            window === booked ? 'booked' : 'agreed',
          )),
    };
  }

  /** The same shift against the moment at which the line was asked for. */
  function askedBackOf(
    seen: Conditioned,
    at: Instant,
    asked: LessWork,
    before: ReadonlySet<string>,
  ): AskedBack | null {
    const by = actuals.find((actual) => actual.step === handedBackStep)?.wantedBy;
    if (by === undefined || by >= window.end) return null;
    const until = { ...window, end: Math.max(by, addMinutes(window.start, 1)) };
    const { onTime: own } = outlookOf(simulation.handbackMinutes, lengthMinutes(until));
    const { advice } = adviceOf(plan, seen, until, { ...asked, own }, at, before);
    return { by, onTime: own, marginLeftMinutes: lengthMinutes(until) - forecast, advice };
  }
}

/** The plan with work that has no title called by its id: on site nothing is nameless. */
const withNames = (plan: Plan): Plan =>
  plan.activities.every((activity) => activity.title !== '')
    ? plan
    : {
        ...plan,
        activities: plan.activities.map((activity) => ({
          ...activity,
          title: activity.title || activity.id,
        })),
      };

/** The window with the end that the shift has agreed to, where that is earlier; itself where it has not. */
function asAgreed(window: AccessWindow, { at, actuals = [] }: HandbackOptions): AccessWindow {
  const end = actuals.find((actual) => actual.step === handedBackStep)?.agreedEnd;
  if (at === undefined || end === undefined || end >= window.end) return window;
  return { ...window, end: Math.max(end, addMinutes(window.start, 1)) };
}

/** The handing back as far as it has been recorded by `at`. */
const seenAt = (actuals: readonly Actual[], at: Instant): Actual | undefined =>
  actuals.find((actual) => actual.step === handedBackStep && (actual.finishedAt ?? Infinity) <= at);

/** Nothing is to be advised any more. */
const isOver = (early: number, end: 'booked' | 'agreed'): Outlook => ({
  advice: {
    say: 'over',
    activity: null,
    more: null,
    leaveOut: [],
    alsoStop: [],
    ...because(
      sayLive('handed-back', {
        minutes: Math.abs(early),
        after: early < 0,
        agreed: end === 'agreed',
      }),
    ),
  },
  options: [],
  notOffered: [],
});

const earliest = (cutOffs: readonly CutOff[]): CutOff | null =>
  [...cutOffs].sort((a, b) => a.latestStart - b.latestStart)[0] ?? null;

import { addMinutes, lengthMinutes, minutesBetween, type Instant } from '../calendar/index.js';
import type { Placement } from '../planner/fit/types.js';
import type { AccessWindow, Plan } from '../model/index.js';
import { conditionedOn } from './conditioned.js';
import { cutOffsOf, decisionsOf, groupsOf, type NodeState } from './cut-offs.js';
import { dropOptions, unitOutlooks } from './less-work.js';
import { handbackNetwork, type HandbackNetwork } from './handback-network/handback-network.js';
import { forwardPass } from './network.js';
import { goPointTimes } from './go-points.js';
import { helpsMost } from './helps-most.js';
import { simulate } from './simulation.js';
import { stampOf } from './stamp.js';
import {
  defaultConfidence,
  type HandbackOptions,
  type HandbackResult,
  type HandbackSimulation,
  type LiveForecast,
  type MarginVerdict,
} from './types.js';

/** Most runs of each what-if: of those of the window's own simulation, the first. */
const WHAT_IF_RUNS = 10_000;

export function verdictOf(marginMinutes: number, requiredMinutes: number): MarginVerdict {
  if (marginMinutes < 0) return 'overrun';
  return marginMinutes >= requiredMinutes ? 'held' : 'eaten-into';
}

/** Handback in minutes after the window's start when everything takes its most likely time. */
export function likelyHandback(built: HandbackNetwork): number {
  const times = forwardPass(built.network.nodes, (index) => built.meanings[index]!.minutes);
  return times.reduce((latest, one) => Math.max(latest, one.finish), 0);
}

function simulationOf(
  built: HandbackNetwork,
  window: AccessWindow,
  options: HandbackOptions,
): HandbackSimulation {
  const { seed, runs, shouldStop, onProgress } = options;
  const deadlineMinutes = lengthMinutes(window);
  const result = simulate(built.network, {
    seed,
    runs,
    deadlineMinutes,
    ...(shouldStop && { shouldStop }),
    ...(onProgress && { onProgress }),
  });
  const at = (minutes: number): Instant => addMinutes(window.start, Math.ceil(minutes));
  const { quantiles } = result;
  const groups = [...groupsOf(built.meanings).values()];
  const subjectOf = (group: readonly number[]) => {
    const { kind, name, activity } = built.meanings[group[0]!]!;
    return { kind, name, ...(activity !== undefined && { activity }) };
  };
  const helped = helpsMost(
    built.network,
    { seed, runs: Math.min(runs, WHAT_IF_RUNS), deadlineMinutes },
    result.criticality,
    groups,
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
      ...subjectOf(groups[group]!),
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
  const here = placements.filter((one) => one.window === window.id);
  const named = new Set(here.map((one) => one.activity));
  const { activities, windows: _, ...rest } = plan;
  const { shouldStop: __, onProgress: ___, ...asked } = options;
  const work = activities.filter((one) => named.has(one.id));
  return stampOf([window, here, work, rest, asked]);
}

/**
 * How a window stands against its booked end: margin, cut-off times, chance of handing back on time; and with `at`,
 * all of it as it stands at that moment of the shift.
 *
 * Placements of other windows are passed over: work done there counts as done in time. The simulation keeps the
 * planned order of visits on shared plant. After the end of the ledger's usable time no curfew is known.
 *
 * @throws {RangeError} When a placement names no activity of the plan, or an option makes no sense.
 */
export function handback(
  plan: Plan,
  window: AccessWindow,
  placements: readonly Placement[],
  options: HandbackOptions,
): HandbackResult {
  const built = handbackNetwork(plan, window, placements, options);
  const requiredMinutes = plan.rules.margin.minutes;
  const confidence = options.confidence ?? defaultConfidence;
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`a confidence of ${confidence}`);
  const marginMinutes = minutesBetween(built.plannedHandback, window.end);
  const now =
    options.at === undefined ? undefined : conditionedOn(built, window, options, options.at);
  const toCome = built.meanings.map((): NodeState => 'to-come');
  const cutOffs = cutOffsOf(built, window, requiredMinutes, now?.states ?? toCome);
  const decisions = decisionsOf(built, window, requiredMinutes, options.commitments ?? []);
  const current = now?.built ?? built;
  const simulation = simulationOf(current, window, options);
  const states = now?.states ?? toCome;
  const lessWork = {
    seed: options.seed,
    runs: Math.min(options.runs, WHAT_IF_RUNS),
    confidence,
    own: simulation.outlook.onTime,
  };
  const units = unitOutlooks(current, window, states, lessWork);
  let live: LiveForecast | null = null;
  if (now && options.at !== undefined) {
    const margin = lengthMinutes(window) - likelyHandback(now.built);
    const short = simulation.outlook.onTime.probability < confidence;
    live = {
      at: options.at,
      forecastHandback: addMinutes(window.end, -margin),
      marginLeftMinutes: margin,
      verdict: verdictOf(margin, requiredMinutes),
      nextCutOff:
        cutOffs
          .filter((one) => one.state === 'to-come')
          .sort((a, b) => a.latestStart - b.latestStart)[0] ?? null,
      beyondEstimate: now.beyondEstimate,
      toDrop: short ? dropOptions(now.built, window, states, lessWork) : [],
    };
  }
  return {
    window: window.id,
    inputsStamp: inputsStamp(plan, window, placements, options),
    bookedEnd: window.end,
    plannedClear: built.plannedClear,
    leadOutMinutes: minutesBetween(built.plannedClear, built.plannedHandback),
    plannedHandback: built.plannedHandback,
    marginMinutes,
    requiredMinutes,
    verdict: verdictOf(marginMinutes, requiredMinutes),
    confidence,
    cutOffs,
    decisions,
    goPoints: goPointTimes(options.goPoints ?? [], window, cutOffs, decisions),
    simulation,
    units,
    live,
  };
}

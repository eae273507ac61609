import { durationText, isoText, type Instant } from '../calendar/index.js';
import type { AccessWindow, Decisions, Plan } from '../model/index.js';
import { cutOffCalendar } from '../engine/handback/cut-off-calendar.js';
import { handbackOf } from '../engine/handback/handback.js';
import type { Actual, CutOff, HandbackResult } from '../risk/index.js';
import type { Allocation } from '../planner/search/types.js';
import { planWork } from './allocate.js';
import type { Answer } from './answer.js';
import type { Arguments } from './arguments.js';
import { iso } from './iso.js';
import { textTable } from './text-table.js';
import { writeCalendar } from './write-calendar.js';

/** The moment of a forecast during the shift, and what has been seen by then. */
export interface Seen {
  readonly at: Instant;
  readonly actuals: readonly Actual[];
}

/** The handback outlook of the windows that take work. With `seen`, only of those open at that moment. */
function outlooks(
  plan: Plan,
  found: Allocation,
  { seed, runs }: Pick<Arguments, 'seed' | 'runs'>,
  decisions: Decisions,
  seen?: Seen,
): { window: AccessWindow; result: HandbackResult }[] {
  const open = plan.windows.filter(
    (window) => !seen || (window.start <= seen.at && seen.at < window.end),
  );
  const byId = new Map(open.map((window) => [window.id, window]));
  const request = {
    placements: found.placements,
    windows: [...byId.keys()],
    seed,
    runs,
    ...decisions,
    ...seen,
  };
  return handbackOf(plan, request).map((result) => ({
    window: byId.get(result.window)!,
    result,
  }));
}

const cutOffJson = (one: CutOff, zone: string): unknown => ({
  ...one,
  plannedStart: isoText(one.plannedStart, zone),
  plannedFinish: isoText(one.plannedFinish, zone),
  latestStart: isoText(one.latestStart, zone),
  latestFinish: isoText(one.latestFinish, zone),
  onTimeStart: isoText(one.onTimeStart, zone),
  onTimeFinish: isoText(one.onTimeFinish, zone),
});

function windowJson(window: AccessWindow, one: HandbackResult): unknown {
  const { zone } = window;
  const { simulation: run, live } = one;
  return {
    window: one.window,
    bookedEnd: isoText(one.bookedEnd, zone),
    plannedClear: isoText(one.plannedClear, zone),
    leadOutMinutes: one.leadOutMinutes,
    plannedHandback: isoText(one.plannedHandback, zone),
    marginMinutes: one.marginMinutes,
    requiredMinutes: one.requiredMinutes,
    verdict: one.verdict,
    cutOffs: one.cutOffs.map((cutOff) => cutOffJson(cutOff, zone)),
    decisions: one.decisions.map((point) => ({
      ...point,
      pointOfNoReturn: iso(point.pointOfNoReturn, zone),
      latestAbort: iso(point.latestAbort, zone),
    })),
    goPoints: one.goPoints.map((point) => ({ ...point, at: isoText(point.at, zone) })),
    inputsStamp: one.inputsStamp,
    pOnTime: run.outlook.onTime.probability,
    pOnTimeStandardError: run.outlook.onTime.standardError,
    outlook: run.outlook,
    p50: isoText(run.p50, zone),
    p80: isoText(run.p80, zone),
    p90: isoText(run.p90, zone),
    p95: isoText(run.p95, zone),
    expectedOverrunMinutes: run.outlook.expectedOverrunMinutes,
    runs: run.runs,
    seed: run.seed,
    criticality: run.criticality,
    helpsMost: run.helpsMost,
    units: one.units,
    live: live && {
      ...live,
      at: isoText(live.at, zone),
      forecastHandback: isoText(live.forecastHandback, zone),
      nextCutOff: live.nextCutOff && cutOffJson(live.nextCutOff, zone),
    },
  };
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/**
 * `handback`: margin, cut-off times and chance of handing back on time of every window that takes work.
 *
 * @param now Moment the calendar file is stamped with, if one is asked for.
 */
export function handback(
  plan: Plan,
  asked: Arguments,
  decisions: Decisions,
  now: Instant,
  seen?: Seen,
): Answer {
  const all = outlooks(plan, planWork(plan, asked), asked, decisions, seen);
  if (asked.calendar !== undefined)
    writeCalendar(
      asked,
      cutOffCalendar(
        all.map((one) => one.result),
        plan.windows,
        now,
      ),
    );
  const rows = all.map(({ window, result }) => [
    window.id,
    isoText(result.bookedEnd, window.zone),
    isoText(result.plannedHandback, window.zone),
    durationText(result.marginMinutes),
    durationText(result.requiredMinutes),
    result.verdict,
    percent(result.simulation.outlook.onTime.probability),
    isoText(result.simulation.p80, window.zone),
    isoText(result.simulation.p95, window.zone),
  ]);
  const live = all.flatMap(({ window, result }) => {
    if (!result.live) return [];
    const { forecastHandback, marginLeftMinutes, nextCutOff, toDrop } = result.live;
    return [
      '',
      `${window.id} at ${isoText(result.live.at, window.zone)}: forecast handback ${isoText(forecastHandback, window.zone)}, margin left ${durationText(marginLeftMinutes)} (${result.live.verdict}).`,
      ...(nextCutOff
        ? [
            `Next cut-off: ${nextCutOff.name} must start by ${isoText(nextCutOff.latestStart, window.zone)}.`,
          ]
        : []),
      ...toDrop.map(
        (drop) =>
          `Leaving out ${drop.activity}${drop.keepUnits === undefined ? '' : ` beyond ${drop.keepUnits} units`}: ${percent(drop.onTime.probability)} on time.`,
      ),
    ];
  });
  const points = all.flatMap(({ window, result }) => {
    const titleOf = (id: string): string =>
      result.cutOffs.find((one) => one.activity === id)?.name ?? id;
    const limits = result.decisions.flatMap(({ activity, pointOfNoReturn, latestAbort }) => [
      ...(pointOfNoReturn === null
        ? []
        : [
            `${window.id}: point of no return of ${titleOf(activity)} ${isoText(pointOfNoReturn, window.zone)}.`,
          ]),
      ...(latestAbort === null
        ? []
        : [
            `${window.id}: latest abandonment of ${titleOf(activity)} ${isoText(latestAbort, window.zone)}.`,
          ]),
    ]);
    const go = result.goPoints.map(
      (one) =>
        `${window.id}: go or no go ${isoText(one.at, window.zone)}, ${one.name} (${one.holder === '' ? 'nobody is named to decide' : one.holder})${one.tooLateFor.length === 0 ? '' : `; too late for ${one.tooLateFor.map(titleOf).join(', ')}`}.`,
    );
    return limits.length + go.length === 0 ? [] : ['', ...limits, ...go];
  });
  return {
    json: { windows: all.map(({ window, result }) => windowJson(window, result)) },
    text: [
      textTable(
        [
          'window',
          'booked end',
          'planned handback',
          'margin',
          'required',
          'verdict',
          'on time',
          'P80',
          'P95',
        ],
        rows,
      ),
      ...live,
      ...points,
      ...(asked.calendar === undefined ? [] : ['', `Written: ${asked.calendar}`]),
    ].join('\n'),
  };
}

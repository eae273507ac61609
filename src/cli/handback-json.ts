import { isoText } from '../calendar/index.js';
import type { AccessWindow } from '../model/index.js';
import type { CutOff, HandbackResult, LiveForecast } from '../risk/index.js';
import { iso } from './iso.js';

/** The handback of one window as a script reads it: instants in the window's zone. */
export function handbackJson(window: AccessWindow, one: HandbackResult): object {
  const { zone } = window;
  const { simulation: run } = one;
  const { onTime } = run.outlook;
  return {
    window: one.window,
    status: one.status,
    bookedEnd: isoText(one.bookedEnd, zone),
    plannedClear: isoText(one.plannedClear, zone),
    leadOutMinutes: one.leadOutMinutes,
    plannedHandback: isoText(one.plannedHandback, zone),
    marginMinutes: one.marginMinutes,
    requiredMinutes: one.requiredMinutes,
    verdict: one.verdict,
    verdictParts: {
      margin: {
        verdict: one.marginVerdict,
        minutes: one.marginMinutes,
        requiredMinutes: one.requiredMinutes,
        shortByMinutes: Math.max(0, one.requiredMinutes - one.marginMinutes),
      },
      chance: {
        wanted: one.chanceWanted,
        pOnTime: onTime.probability,
        standardError: onTime.standardError,
        reached: one.chanceWanted === null ? null : onTime.probability >= one.chanceWanted,
        marginNeededMinutes: one.marginForChanceMinutes,
      },
    },
    cutOffs: one.cutOffs.map((cutOff) => cutOffJson(cutOff, zone)),
    decisions: one.decisions.map((point) => ({
      ...point,
      pointOfNoReturn: iso(point.pointOfNoReturn, zone),
      latestAbort: iso(point.latestAbort, zone),
    })),
    goPoints: one.goPoints.map((point) => ({ ...point, at: isoText(point.at, zone) })),
    inputsStamp: one.inputsStamp,
    pOnTime: onTime.probability,
    pOnTimeStandardError: onTime.standardError,
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
    notPlaced: one.notPlaced,
    whole: lineJson(one.whole, zone),
    lines: one.lines.map((line) => lineJson(line, zone)),
    speedLimits: one.speedLimits,
    live: one.live && liveJson(one.live, zone),
  };
}

const lineJson = (line: HandbackResult['whole'], zone: string): object => ({
  ...line,
  plannedClear: iso(line.plannedClear, zone),
});

const cutOffJson = (one: CutOff, zone: string): object => ({
  ...one,
  plannedStart: isoText(one.plannedStart, zone),
  plannedFinish: isoText(one.plannedFinish, zone),
  latestStart: isoText(one.latestStart, zone),
  latestFinish: isoText(one.latestFinish, zone),
  onTimeStart: isoText(one.onTimeStart, zone),
  onTimeFinish: isoText(one.onTimeFinish, zone),
  chanceStart: iso(one.chanceStart, zone),
});

function liveJson({ options, ...live }: LiveForecast, zone: string): object {
  return {
    ...live,
    at: isoText(live.at, zone),
    forecastHandback: isoText(live.forecastHandback, zone),
    next: live.next && cutOffJson(live.next, zone),
    nextCutOff: live.nextCutOff && cutOffJson(live.nextCutOff, zone),
    passedCutOffs: live.passedCutOffs.map((one) => cutOffJson(one, zone)),
    options: options.map(({ onTime, ...one }) => ({
      ...one,
      pOnTime: onTime.probability,
      standardError: onTime.standardError,
    })),
  };
}

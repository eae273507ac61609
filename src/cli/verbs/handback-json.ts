import { isoText } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import {
  reachesChance,
  type CutOff,
  type HandbackResult,
  type LiveForecast,
} from '../../risk/index.js';
import type { HandbackWindow, LineJson } from '../answers/handback.js';
import type { CutOffJson, LiveJson } from '../answers/live.js';
import { iso } from '../print/iso.js';

/** The handback of one window as a script reads it: instants in the window's zone. */
export function handbackJson(window: AccessWindow, one: HandbackResult): HandbackWindow {
  const { zone } = window;
  const { simulation: run } = one;
  const { onTime } = run.outlook;
  return {
    window: one.window,
    status: one.status,
    bookedEnd: isoText(one.bookedBefore ?? one.bookedEnd, zone),
    agreedEnd: one.bookedBefore === null ? null : isoText(one.bookedEnd, zone),
    plannedClear: isoText(one.plannedClear, zone),
    leadOutMinutes: one.leadOutMinutes,
    plannedHandback: isoText(one.plannedHandback, zone),
    marginMinutes: one.marginMinutes,
    requiredMinutes: one.requiredMinutes,
    verdict: one.verdict,
    verdictParts: {
      margin: {
        verdict: one.marginVerdict,
        minutes: marginNow(one),
        requiredMinutes: one.requiredMinutes,
        shortByMinutes: Math.max(0, one.requiredMinutes - marginNow(one)),
      },
      chance: {
        wanted: one.chanceWanted,
        pOnTime: onTime.probability,
        standardError: onTime.standardError,
        reached:
          one.chanceWanted === null
            ? null
            : reachesChance(onTime.probability, one.chanceWanted, run.runs),
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

/** The margin that the verdict speaks of: what is left of it during the shift. */
const marginNow = (one: HandbackResult): number => one.live?.marginLeftMinutes ?? one.marginMinutes;

const lineJson = (line: HandbackResult['whole'], zone: string): LineJson => ({
  ...line,
  plannedClear: iso(line.plannedClear, zone),
});

const cutOffJson = (one: CutOff, zone: string): CutOffJson => ({
  ...one,
  plannedStart: isoText(one.plannedStart, zone),
  plannedFinish: isoText(one.plannedFinish, zone),
  latestStart: isoText(one.latestStart, zone),
  latestFinish: isoText(one.latestFinish, zone),
  onTimeStart: isoText(one.onTimeStart, zone),
  onTimeFinish: isoText(one.onTimeFinish, zone),
  chanceStart: iso(one.chanceStart, zone),
});

function liveJson({ options, ...live }: LiveForecast, zone: string): LiveJson {
  return {
    ...live,
    at: isoText(live.at, zone),
    handedBackAt: iso(live.handedBackAt, zone),
    askedBack: live.askedBack && {
      by: isoText(live.askedBack.by, zone),
      pOnTime: live.askedBack.onTime.probability,
      standardError: live.askedBack.onTime.standardError,
      marginLeftMinutes: live.askedBack.marginLeftMinutes,
      advice: live.askedBack.advice,
    },
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

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

/** The handback of a window as JSON; times in the window's zone. */
export function handbackJson(window: AccessWindow, result: HandbackResult): HandbackWindow {
  const { zone } = window;
  const { simulation: run } = result;
  const { onTime } = run.outlook;
  return {
    window: result.window,
    status: result.status,
    bookedEnd: isoText(result.bookedBefore ?? result.bookedEnd, zone),
    agreedEnd: result.bookedBefore === null ? null : isoText(result.bookedEnd, zone),
    plannedClear: isoText(result.plannedClear, zone),
    leadOutMinutes: result.leadOutMinutes,
    plannedHandback: isoText(result.plannedHandback, zone),
    marginMinutes: result.marginMinutes,
    requiredMinutes: result.requiredMinutes,
    verdict: result.verdict,
    verdictParts: {
      margin: {
        verdict: result.marginVerdict,
        minutes: marginNow(result),
        requiredMinutes: result.requiredMinutes,
        shortByMinutes: Math.max(0, result.requiredMinutes - marginNow(result)),
      },
      chance: {
        wanted: result.chanceWanted,
        pOnTime: onTime.probability,
        standardError: onTime.standardError,
        reached:
          result.chanceWanted === null
            ? null
            : reachesChance(onTime.probability, result.chanceWanted, run.runs),
        close: result.chanceWanted === null ? null : result.chanceIsClose,
        marginNeededMinutes: result.marginForChanceMinutes,
      },
    },
    cutOffs: result.cutOffs.map((cutOff) => cutOffJson(cutOff, zone)),
    decisions: result.decisions.map((point) => ({
      ...point,
      pointOfNoReturn: iso(point.pointOfNoReturn, zone),
      latestAbort: iso(point.latestAbort, zone),
    })),
    goPoints: result.goPoints.map((point) => ({ ...point, at: isoText(point.at, zone) })),
    inputsStamp: result.inputsStamp,
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
    units: result.units,
    notPlaced: result.notPlaced,
    whole: lineJson(result.whole, zone),
    lines: result.lines.map((line) => lineJson(line, zone)),
    speedLimits: result.speedLimits,
    live: result.live && liveJson(result.live, zone),
  };
}

/** The margin of the verdict; during the shift, what is left of it. */
const marginNow = (result: HandbackResult): number =>
  result.live?.marginLeftMinutes ?? result.marginMinutes;

const lineJson = (line: HandbackResult['whole'], zone: string): LineJson => ({
  ...line,
  plannedClear: iso(line.plannedClear, zone),
});

const cutOffJson = (off: CutOff, zone: string): CutOffJson => ({
  ...off,
  plannedStart: isoText(off.plannedStart, zone),
  plannedFinish: isoText(off.plannedFinish, zone),
  latestStart: isoText(off.latestStart, zone),
  latestFinish: isoText(off.latestFinish, zone),
  onTimeStart: isoText(off.onTimeStart, zone),
  onTimeFinish: isoText(off.onTimeFinish, zone),
  chanceStart: iso(off.chanceStart, zone),
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
    passedCutOffs: live.passedCutOffs.map((cutOff) => cutOffJson(cutOff, zone)),
    options: options.map(({ onTime, ...option }) => ({
      ...option,
      pOnTime: onTime.probability,
      standardError: onTime.standardError,
    })),
  };
}

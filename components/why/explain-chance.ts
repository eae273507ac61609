import { durationText } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { errorText } from '../handback/times.js';
import { momentText, numberText } from '../shared/format.js';
import { endLabel, endWord } from './end-word.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';
import { percentText } from '../shared/chance.js';

/** Chance of handing back by the booked end, as the share of simulated runs that do. */
export function explainOnTime(result: HandbackResult, window: AccessWindow): Explanation {
  const { chance: words } = explainWords();
  const { simulation: run, confidence } = result;
  const { onTime } = run.outlook;
  const late = Math.round((1 - onTime.probability) * run.runs);
  return {
    title: words.onTime(result.window),
    figure: percentText(onTime.probability, run.runs),
    tone: onTime.probability >= confidence ? 'good' : 'bad',
    sentence: words.share(endWord(result), percentText(confidence)),
    rows: [
      { label: endLabel(result), figure: momentText(result.bookedEnd, window.zone) },
      {
        label: words.runsOnTime,
        figure: words.of(count(run.runs - late), count(run.runs)),
        strong: true,
      },
      { label: words.runsLate, figure: count(late) },
      { label: words.standardError, figure: words.points(errorText(onTime)) },
      ...runRows(result),
      ...decidedBy(result),
    ],
    links: linksOf(result),
  };
}

/** The handback that so many in a hundred runs do not exceed. */
export function explainPValue(
  result: HandbackResult,
  window: AccessWindow,
  percent: 50 | 80 | 90 | 95,
): Explanation {
  const { chance: words, handback } = explainWords();
  const { simulation: run } = result;
  const moment = { 50: run.p50, 80: run.p80, 90: run.p90, 95: run.p95 }[percent];
  const rank = Math.ceil((percent / 100) * run.runs);
  const late = moment > result.bookedEnd;
  return {
    title: words.pValue(percent, result.window),
    figure: momentText(moment, window.zone),
    tone: late ? 'bad' : 'good',
    sentence: (late ? words.pAfter : words.pBefore)(percent, endWord(result)),
    rows: [
      {
        label: words.countedTo,
        figure: words.of(count(rank), count(run.runs)),
        strong: true,
      },
      { label: endLabel(result), figure: momentText(result.bookedEnd, window.zone) },
      { label: handback.plannedHandback, figure: momentText(result.plannedHandback, window.zone) },
      ...runRows(result),
      ...decidedBy(result),
    ],
    links: linksOf(result),
  };
}

/** Mean minutes late, a run on time counting as 0; or the chance of being later than so much. */
export function explainLateness(result: HandbackResult, minutes: number | null): Explanation {
  const { chance: words } = explainWords();
  const { simulation: run } = result;
  const { outlook } = run;
  const later = outlook.laterThan.find((item) => item.minutes === minutes);
  if (minutes !== null && !later)
    throw new RangeError(`the chance of ${minutes} minutes late was not worked out`);
  return {
    title: later
      ? words.laterThan(durationText(later.minutes), result.window)
      : words.expected(result.window),
    figure: later
      ? percentText(later.probability)
      : `${numberText(outlook.expectedOverrunMinutes, 1)} min`,
    sentence: later ? words.laterShare(endWord(result)) : words.mean,
    rows: [
      {
        label: words.standardError,
        figure: later
          ? words.points(errorText(later))
          : `\u00b1${numberText(outlook.overrunStandardError, 2)} min`,
      },
      ...outlook.laterThan.map((item) => ({
        label: words.moreLate(durationText(item.minutes)),
        figure: percentText(item.probability),
        strong: item === later,
      })),
      ...runRows(result),
      ...decidedBy(result),
    ],
    links: linksOf(result),
  };
}

/** Chance of handing back on time after so many units, or how many units keep the chance aimed at. */
export function explainUnits(
  result: HandbackResult,
  activity: string,
  units: number | undefined,
): Explanation {
  const all = explainWords();
  const { chance: words } = all;
  const outlook = result.units.find((item) => item.activity === activity);
  if (!outlook) throw new RangeError(`${activity} has no units in window ${result.window}`);
  const asked = outlook.chances.find((chance) => chance.units === units);
  if (units !== undefined && !asked)
    throw new RangeError(`the chance after ${units} units was not worked out`);
  const safe = outlook.unitsWithinConfidence;
  return {
    title:
      units === undefined
        ? words.unitsKeep(activity, result.window)
        : words.afterUnitsOf(units, activity, result.window),
    figure: asked ? percentText(asked.onTime.probability) : String(safe),
    tone: (asked ? asked.onTime.probability >= result.confidence : safe > 0) ? 'good' : 'bad',
    sentence: words.stops(percentText(result.confidence)),
    rowsTitle: words.whereToStop,
    rows: [
      ...outlook.chances.map((chance): ExplanationRow => {
        const error = words.points(errorText(chance.onTime));
        return {
          label: words.afterUnits(chance.units),
          figure: percentText(chance.onTime.probability),
          note: chance.units === safe ? words.mostThatKeep(error) : error,
          strong: chance === asked || (!asked && chance.units === safe),
        };
      }),
      ...runRows(result),
    ],
    links: [
      ...linksOf(result),
      { text: all.activityInSheet(activity), place: { to: 'activity', id: activity } },
    ],
  };
}

/** How the simulation was run: the same seed gives the same figures. */
function runRows({ simulation: run, live }: HandbackResult): ExplanationRow[] {
  const { chance: words } = explainWords();
  return [
    {
      label: words.runs,
      figure: count(run.runs),
      ...(run.stopped ? { note: words.rougher } : {}),
    },
    { label: words.seed, figure: String(run.seed), note: words.sameFigures },
    ...(live
      ? [
          {
            label: words.fromShift,
            figure: '',
            note: words.notFromPlan,
          },
        ]
      : []),
  ];
}

/** What decided the handback most often. */
function decidedBy({ simulation: { criticality } }: HandbackResult): ExplanationRow[] {
  const { chance: words } = explainWords();
  return [...criticality]
    .sort((a, b) => b.share - a.share)
    .slice(0, 5)
    .filter((item) => item.share > 0)
    .map((item): ExplanationRow => ({
      label: words.decidedBy(item.name),
      figure: percentText(item.share),
      note: words.ofRuns,
      place:
        item.activity === undefined
          ? { to: 'rule', id: item.name }
          : { to: 'activity', id: item.activity },
    }));
}

function linksOf({ window }: HandbackResult): Explanation['links'] {
  return [{ text: explainWords().windowInSheet(window), place: { to: 'window', id: window } }];
}

function count(value: number): string {
  return numberText(value);
}

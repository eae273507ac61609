import { durationText } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { errorText } from '../handback/times.js';
import { momentText, numberText } from '../shared/format.js';
import { endLabel, endWord } from './end-word.js';
import type { Explanation, ExplanationRow } from './explanation.js';
import { percentText } from '../shared/chance.js';

/** Chance of handing back by the booked end, as the share of simulated runs that do. */
export function explainOnTime(result: HandbackResult, window: AccessWindow): Explanation {
  const { simulation: run, confidence } = result;
  const { onTime } = run.outlook;
  const late = Math.round((1 - onTime.probability) * run.runs);
  return {
    title: `Chance of handing back on time, window ${result.window}`,
    figure: percentText(onTime.probability, run.runs),
    tone: onTime.probability >= confidence ? 'good' : 'bad',
    sentence: `The share of simulated runs that hand back by the ${endWord(result)}, all durations drawn from their least, likely and most. Aimed at: ${percentText(confidence)}.`,
    rows: [
      { label: endLabel(result), figure: momentText(result.bookedEnd, window.zone) },
      {
        label: 'Runs on time',
        figure: `${count(run.runs - late)} of ${count(run.runs)}`,
        strong: true,
      },
      { label: 'Runs late', figure: count(late) },
      { label: 'Standard error', figure: `\u00b1${errorText(onTime)} points` },
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
  const { simulation: run } = result;
  const moment = { 50: run.p50, 80: run.p80, 90: run.p90, 95: run.p95 }[percent];
  const rank = Math.ceil((percent / 100) * run.runs);
  const late = moment > result.bookedEnd;
  return {
    title: `P${percent} of the handback, window ${result.window}`,
    figure: momentText(moment, window.zone),
    tone: late ? 'bad' : 'good',
    sentence: `The earliest minute by which at least ${percent} in 100 simulated runs have handed back (nearest rank, up to the next whole minute). It lies ${late ? 'after' : 'before or at'} the ${endWord(result)}.`,
    rows: [
      {
        label: 'Runs in order of handback, counted to',
        figure: `${count(rank)} of ${count(run.runs)}`,
        strong: true,
      },
      { label: endLabel(result), figure: momentText(result.bookedEnd, window.zone) },
      { label: 'Planned handback', figure: momentText(result.plannedHandback, window.zone) },
      ...runRows(result),
      ...decidedBy(result),
    ],
    links: linksOf(result),
  };
}

/** Mean minutes late, a run on time counting as 0; or the chance of being later than so much. */
export function explainLateness(result: HandbackResult, minutes: number | null): Explanation {
  const { simulation: run } = result;
  const { outlook } = run;
  const later = outlook.laterThan.find((item) => item.minutes === minutes);
  if (minutes !== null && !later)
    throw new RangeError(`the chance of ${minutes} minutes late was not worked out`);
  return {
    title: later
      ? `Chance of more than ${durationText(later.minutes)} late, window ${result.window}`
      : `Expected overrun, window ${result.window}`,
    figure: later
      ? percentText(later.probability)
      : `${numberText(outlook.expectedOverrunMinutes, 1)} min`,
    sentence: later
      ? `The share of simulated runs that hand back later than that after the ${endWord(result)}.`
      : 'The mean of the minutes late over all simulated runs; a run on time counts as 0. It is not how late a late handback is.',
    rows: [
      {
        label: 'Standard error',
        figure: later
          ? `\u00b1${errorText(later)} points`
          : `\u00b1${numberText(outlook.overrunStandardError, 2)} min`,
      },
      ...outlook.laterThan.map((item) => ({
        label: `More than ${durationText(item.minutes)} late`,
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
  const outlook = result.units.find((item) => item.activity === activity);
  if (!outlook) throw new RangeError(`${activity} has no units in window ${result.window}`);
  const asked = outlook.chances.find((chance) => chance.units === units);
  if (units !== undefined && !asked)
    throw new RangeError(`the chance after ${units} units was not worked out`);
  const safe = outlook.unitsWithinConfidence;
  return {
    title:
      units === undefined
        ? `Units of ${activity} that keep the aim, window ${result.window}`
        : `Chance on time after ${units} units of ${activity}, window ${result.window}`,
    figure: asked ? percentText(asked.onTime.probability) : String(safe),
    tone: (asked ? asked.onTime.probability >= result.confidence : safe > 0) ? 'good' : 'bad',
    sentence: `Each row stops the work after so many units, those already in place included, and simulates the rest of the window. Aimed at: ${percentText(result.confidence)}.`,
    rowsTitle: 'Where to stop',
    rows: [
      ...outlook.chances.map((chance): ExplanationRow => ({
        label: `After ${chance.units} units`,
        figure: percentText(chance.onTime.probability),
        note: `\u00b1${errorText(chance.onTime)} points${chance.units === safe ? ', the most that keep the aim' : ''}`,
        strong: chance === asked || (!asked && chance.units === safe),
      })),
      ...runRows(result),
    ],
    links: [
      ...linksOf(result),
      { text: `Activity ${activity} in the sheet`, place: { to: 'activity', id: activity } },
    ],
  };
}

/** How the simulation was run: the same seed gives the same figures. */
function runRows({ simulation: run, live }: HandbackResult): ExplanationRow[] {
  return [
    {
      label: 'Runs',
      figure: count(run.runs),
      ...(run.stopped ? { note: 'stopped before all were done: rougher' } : {}),
    },
    { label: 'Seed', figure: String(run.seed), note: 'the same seed gives the same figures' },
    ...(live
      ? [
          {
            label: 'Forecast from the shift as written down',
            figure: '',
            note: 'not from the plan',
          },
        ]
      : []),
  ];
}

/** What decided the handback most often. */
function decidedBy({ simulation: { criticality } }: HandbackResult): ExplanationRow[] {
  return [...criticality]
    .sort((a, b) => b.share - a.share)
    .slice(0, 5)
    .filter((item) => item.share > 0)
    .map((item): ExplanationRow => ({
      label: `Decided by ${item.name}`,
      figure: percentText(item.share),
      note: 'of the runs',
      place:
        item.activity === undefined
          ? { to: 'rule', id: item.name }
          : { to: 'activity', id: item.activity },
    }));
}

function linksOf({ window }: HandbackResult): Explanation['links'] {
  return [{ text: `Window ${window} in the sheet`, place: { to: 'window', id: window } }];
}

function count(value: number): string {
  return numberText(value);
}

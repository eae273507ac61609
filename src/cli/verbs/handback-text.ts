import { durationText, type Instant } from '../../calendar/index.js';
import type { Plan } from '../../model/index.js';
import {
  chanceText,
  guardingSteps,
  reachesChance,
  type Advice,
  type HandbackResult,
  type NotPlaced,
} from '../../risk/index.js';
import type { WindowOutlook } from './window-outlook.js';
import { clockWords } from '../../calendar/clock-words.js';
import { table, type Block } from '../print/blocks.js';

const verdictWords: Readonly<Record<HandbackResult['verdict'], string>> = {
  held: 'held',
  'chance-low': 'chance low',
  eaten: 'eaten into',
  overrun: 'overrun',
};

/** The answer of `handback` as text. */
export function handbackText(
  plan: Plan,
  all: readonly WindowOutlook[],
  notPlaced: readonly (NotPlaced & { readonly window: string })[],
  calendar: string | undefined,
): readonly Block[] {
  const blocks = [
    ...all.map((outlook) => shortWords(outlook)),
    ...all.map((outlook) => liveWords(plan, outlook)),
    ...all.map(pointWords),
    [
      ...all.flatMap(openWords),
      ...notPlaced.map((item) => `${item.window}: not placed: ${workWords(item)}.`),
    ],
    calendar === undefined ? [] : [`Written: ${calendar}`],
  ];
  const live = all.some((outlook) => outlook.result.live);
  const heads = [
    'window',
    'status',
    'booked end',
    live ? 'forecast handback' : 'planned handback',
    live ? 'margin left' : 'margin',
    'required',
    'verdict',
    'on time',
    'P80',
    'P95',
  ];
  return [
    ...(all.length === 0 ? [] : [table(heads, all.map(row)), ...runsWords(all)]),
    ...blocks.flatMap((lines) => (lines.length === 0 ? [] : ['', ...lines])),
  ];
}

/** Without a wanted chance, "held" is about the margin only and says so. */
const verdictOf = ({ verdict, chanceWanted }: HandbackResult): string =>
  verdict === 'held' && chanceWanted === null ? 'held (margin alone)' : verdictWords[verdict];

const marginNow = ({ live, marginMinutes }: HandbackResult): number =>
  live?.marginLeftMinutes ?? marginMinutes;

const chanceOf = ({ simulation }: HandbackResult): string =>
  chanceText(simulation.outlook.onTime.probability, simulation.runs);

/** The booked end, and the earlier agreed one if it was changed. */
const endWords = ({ bookedEnd, bookedBefore }: HandbackResult, zone: string): string =>
  bookedBefore === null
    ? clockWords(bookedEnd, zone)
    : `${clockWords(bookedEnd, zone)} agreed (booked ${clockWords(bookedBefore, zone)})`;

function row({ window, result }: WindowOutlook): string[] {
  return [
    window.id,
    result.status,
    endWords(result, window.zone),
    clockWords(result.live?.forecastHandback ?? result.plannedHandback, window.zone),
    durationText(marginNow(result)),
    durationText(result.requiredMinutes),
    verdictOf(result),
    chanceOf(result),
    clockWords(result.simulation.p80, window.zone),
    clockWords(result.simulation.p95, window.zone),
  ];
}

function runsWords(all: readonly WindowOutlook[]): readonly string[] {
  const [first] = all;
  if (!first) return [];
  const { runs, seed } = first.result.simulation;
  return [
    '',
    `On time, P80 and P95 come from ${runs} simulated runs, seed ${seed}. P80 and P95 may be earlier than the planned handback: the plan waits for planned starts, a simulated run need not.`,
  ];
}

/** Which part of the verdict fails, and by how much. */
function shortWords({ window, result }: WindowOutlook): readonly string[] {
  const { requiredMinutes, chanceWanted } = result;
  if (result.live?.handedBackAt) return [];
  const words = [
    ...(result.marginVerdict === 'held'
      ? []
      : [
          `${window.id}: the margin is short by ${durationText(requiredMinutes - marginNow(result))}.`,
        ]),
    ...(chanceWanted === null ? [] : chanceShortWords(window.id, result, chanceWanted)),
  ];
  return words;
}

/** That the chance wanted is not reached, or only just. */
function chanceShortWords(id: string, result: HandbackResult, wanted: number): readonly string[] {
  const { runs, outlook } = result.simulation;
  const { probability } = outlook.onTime;
  const found = `${id}: the chance is ${chanceOf(result)}, wanted ${chanceText(wanted)}`;
  const close = result.chanceIsClose;
  if (probability < wanted)
    return [
      `${found}; by these runs a margin of ${durationText(result.marginForChanceMinutes)} would give it.${close ? ' So close that other runs may reach it.' : ''}`,
    ];
  // Too few runs are said once, in a note.
  return close && reachesChance(probability, wanted, runs)
    ? [`${found}: so close that other runs may fall short of it.`]
    : [];
}

/** The advice in capitals, with the work it counts and what it leaves out. It never says to continue without a grant. */
function sayWords(
  { say, more, activity, leaveOut, alsoStop }: Advice,
  titleOf: (id: string) => string,
  isGranted = true,
): string {
  const noGrant = 'NO GRANT RECORDED';
  const words = {
    stop: 'STOP NOW',
    more: isGranted ? `${more} MORE` : `${noGrant}, ${more} MORE`,
    'carry-on': isGranted ? 'CARRY ON' : noGrant,
    over: 'HANDED BACK',
  };
  const of = say === 'carry-on' || activity === null ? '' : ` (${titleOf(activity)})`;
  const without = leaveOut.filter((id) => id !== activity || say === 'carry-on');
  const stops = alsoStop.map((stop) => `, ${titleOf(stop.activity)}: stop at ${stop.units}`);
  return `${words[say]}${of}${stops.join('')}${without.length === 0 ? '' : `, leave out ${without.map(titleOf).join(', ')}`}`;
}

function liveWords(plan: Plan, { window, result }: WindowOutlook): readonly string[] {
  const { live } = result;
  if (!live) return [];
  const at = (moment: Instant): string => clockWords(moment, window.zone);
  const titleOf = (id: string): string =>
    plan.activities.find((activity) => activity.id === id)?.title || id;
  const guards = guardingSteps(plan.rules);
  const { advice, next, nextCutOff, passedCutOffs, askedBack } = live;
  const { runs } = result.simulation;
  const isGranted = live.doubts.every((doubt) => doubt.code !== 'not-granted');
  if (live.handedBackAt !== null)
    return [
      `${window.id} at ${at(live.at)}: ${sayWords(advice, titleOf)} ${at(live.handedBackAt)}. ${advice.why}`,
      ...live.doubts.map((doubt) => `Check: ${doubt.text}`),
    ];
  return [
    `${window.id} at ${at(live.at)}: ${sayWords(advice, titleOf, isGranted)}. ${advice.why}`,
    ...(askedBack
      ? [
          `Asked back by ${at(askedBack.by)}, ${chanceText(askedBack.onTime.probability, runs)} as planned. For that: ${sayWords(askedBack.advice, titleOf)}. ${askedBack.advice.why}`,
        ]
      : []),
    ...live.doubts.map((doubt) => `Check: ${doubt.text}`),
    `Forecast handback ${at(live.forecastHandback)}, margin left ${durationText(live.marginLeftMinutes)} (${verdictWords[live.verdict]}).`,
    ...(next
      ? [
          `Next: ${next.name}, ${next.plannedStart < live.at ? 'was planned' : 'planned'} ${at(next.plannedStart)}.`,
        ]
      : []),
    ...(nextCutOff
      ? [
          guards(nextCutOff.kind, nextCutOff.name)
            ? `If ${nextCutOff.name} has not begun by ${at(nextCutOff.latestStart)}, less work fits. Never hurry it.`
            : `Next cut-off: ${nextCutOff.name} must start by ${at(nextCutOff.latestStart)}.`,
        ]
      : []),
    ...passedCutOffs.map(
      (cutOff) =>
        `Passed: ${cutOff.name} was to start by ${at(cutOff.latestStart)} to keep the margin.`,
    ),
    ...live.options.map(
      (option) =>
        `  ${optionWords(option, titleOf)}: ${chanceText(option.onTime.probability, runs)} on time.`,
    ),
    ...live.notOffered.map((offered) => `Not offered: ${offered.why}`),
  ];
}

function optionWords(
  {
    activity,
    more,
    units,
    leaveOut,
    alsoStop,
  }: NonNullable<HandbackResult['live']>['options'][number],
  titleOf: (id: string) => string,
): string {
  const without = [
    ...alsoStop.map((stop) => `${titleOf(stop.activity)}: stop at ${stop.units}`),
    ...(leaveOut.length === 0 ? [] : [`without ${leaveOut.map(titleOf).join(', ')}`]),
  ].join(', ');
  if (activity === undefined || more === undefined) return without || 'All as planned';
  if (leaveOut.includes(activity)) return without;
  const count =
    units === 0
      ? `no unit of ${titleOf(activity)}`
      : more === 0
        ? `${titleOf(activity)}: stop at ${units}`
        : `${titleOf(activity)}: ${more} more`;
  return without === '' ? count : `${count}, ${without}`;
}

function pointWords({ window, result }: WindowOutlook): readonly string[] {
  const titleOf = (id: string): string =>
    result.cutOffs.find((cutOff) => cutOff.activity === id)?.name ?? id;
  const at = (moment: Instant): string => clockWords(moment, window.zone);
  const limits = result.decisions.flatMap(({ activity, pointOfNoReturn, latestAbort }) => [
    ...(pointOfNoReturn === null
      ? []
      : [`${window.id}: point of no return of ${titleOf(activity)}: ${at(pointOfNoReturn)}.`]),
    ...(latestAbort === null
      ? []
      : [`${window.id}: latest abandonment of ${titleOf(activity)}: ${at(latestAbort)}.`]),
  ]);
  const go = result.goPoints.map(
    (point) =>
      `${window.id}: go/no-go at ${at(point.at)}, ${point.name} (${point.holder === '' ? 'nobody is named as deciding' : point.holder})${point.tooLateFor.length === 0 ? '' : `; too late for ${point.tooLateFor.map(titleOf).join(', ')}`}.`,
  );
  return [...limits, ...go];
}

const workWords = ({ title, activity, units }: NotPlaced): string =>
  `${title} (${activity})${units === undefined ? '' : `, ${units} units`}`;

/** What is still open at handback: unplaced work, lines not fit to run, speed restrictions. */
function openWords({ window, result }: WindowOutlook): readonly string[] {
  return [
    ...result.notPlaced.map(
      (notPlaced) =>
        `${window.id}: not placed: ${workWords(notPlaced)}${notPlaced.fixedHere ? ', meant for this window' : ''}.`,
    ),
    ...[result.whole, ...result.lines].flatMap((handback) =>
      handback.notMadeGood.length === 0
        ? []
        : [
            `${window.id}: do not hand back ${handback.line === '' ? 'the window' : `line ${handback.line}`}: ${handback.notMadeGood.join(', ')} is opened and not made good here.`,
          ],
    ),
    ...result.speedLimits.map(
      (limit) =>
        `${window.id}: handed back at ${limit.limit.value} ${limit.limit.unit} after ${limit.title}, ${limit.liftedBy === null ? 'and no planned work lifts it' : `until ${limit.liftedBy.activity}${limit.liftedBy.window === null ? '' : ` in ${limit.liftedBy.window}`}`}.`,
    ),
  ];
}

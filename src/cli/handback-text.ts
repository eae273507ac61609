import { durationText, type Instant } from '../calendar/index.js';
import type { Plan } from '../model/index.js';
import { chanceText, guardingSteps, type HandbackResult, type NotPlaced } from '../risk/index.js';
import type { WindowOutlook } from './window-outlook.js';
import { clockWords } from './clock-words.js';
import { textTable } from './text-table.js';

const verdictWords: Readonly<Record<HandbackResult['verdict'], string>> = {
  held: 'held',
  'chance-low': 'chance low',
  eaten: 'eaten into',
  overrun: 'overrun',
};

/** The answer of `handback` in words. */
export function handbackText(
  plan: Plan,
  all: readonly WindowOutlook[],
  notPlaced: readonly (NotPlaced & { readonly window: string })[],
  calendar: string | undefined,
): string {
  const blocks = [
    ...all.map((one) => shortWords(one)),
    ...all.map((one) => liveWords(plan, one)),
    ...all.map(pointWords),
    [
      ...all.flatMap(openWords),
      ...notPlaced.map((one) => `${one.window}: not placed: ${workWords(one)}.`),
    ],
    calendar === undefined ? [] : [`Written: ${calendar}`],
  ];
  return [
    textTable(
      [
        'window',
        'status',
        'booked end',
        'planned handback',
        'margin',
        'required',
        'verdict',
        'on time',
        'P80',
        'P95',
      ],
      all.map(row),
    ),
    ...runsWords(all),
    ...blocks.flatMap((lines) => (lines.length === 0 ? [] : ['', ...lines])),
  ].join('\n');
}

/** Where no chance is wanted the word speaks of the margin alone, and says so. */
const verdictOf = ({ verdict, chanceWanted }: HandbackResult): string =>
  verdict === 'held' && chanceWanted === null ? 'held (margin alone)' : verdictWords[verdict];

function row({ window, result }: WindowOutlook): string[] {
  return [
    window.id,
    result.status,
    clockWords(result.bookedEnd, window.zone),
    clockWords(result.plannedHandback, window.zone),
    durationText(result.marginMinutes),
    durationText(result.requiredMinutes),
    verdictOf(result),
    chanceText(result.simulation.outlook.onTime.probability),
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
    `On time, P80 and P95 are from ${runs} simulated runs, seed ${seed}. A P-value before the planned handback is no fault: the plan waits for planned starts that a run need not wait for.`,
  ];
}

/** Which part of the verdict is short, and by what. */
function shortWords({ window, result }: WindowOutlook): readonly string[] {
  const { marginMinutes, requiredMinutes, chanceWanted, simulation } = result;
  const { onTime } = simulation.outlook;
  const words = [
    ...(result.marginVerdict === 'held'
      ? []
      : [`${window.id}: the margin is short by ${durationText(requiredMinutes - marginMinutes)}.`]),
    ...(chanceWanted !== null && onTime.probability < chanceWanted
      ? [
          `${window.id}: the chance is ${chanceText(onTime.probability)}, wanted ${chanceText(chanceWanted)}; a margin of ${durationText(result.marginForChanceMinutes)} would give it.`,
        ]
      : []),
  ];
  return words;
}

const sayWords = (advice: NonNullable<HandbackResult['live']>['advice']): string =>
  advice.say === 'stop' ? 'STOP NOW' : advice.say === 'more' ? `${advice.more} MORE` : 'CARRY ON';

function liveWords(plan: Plan, { window, result }: WindowOutlook): readonly string[] {
  const { live } = result;
  if (!live) return [];
  const at = (moment: Instant): string => clockWords(moment, window.zone);
  const titleOf = (id: string): string => plan.activities.find((one) => one.id === id)?.title ?? id;
  const guards = guardingSteps(plan.rules);
  const { advice, next, nextCutOff, passedCutOffs } = live;
  const subject =
    advice.say === 'carry-on' || advice.activity === null ? '' : ` (${titleOf(advice.activity)})`;
  return [
    `${window.id} at ${at(live.at)}: ${sayWords(advice)}${subject}. ${advice.why}`,
    `Forecast handback ${at(live.forecastHandback)}, margin left ${durationText(live.marginLeftMinutes)} (${verdictWords[live.verdict]}).`,
    ...(next ? [`Next: ${next.name}, planned ${at(next.plannedStart)}.`] : []),
    ...(nextCutOff
      ? [
          guards(nextCutOff.kind, nextCutOff.name)
            ? `If ${nextCutOff.name} has not begun by ${at(nextCutOff.latestStart)}, less work fits. It is never to be hurried.`
            : `Next cut-off: ${nextCutOff.name} must start by ${at(nextCutOff.latestStart)}.`,
        ]
      : []),
    ...passedCutOffs.map(
      (one) => `Passed: ${one.name} was to start by ${at(one.latestStart)} to keep the margin.`,
    ),
    ...live.options.map(
      (one) => `  ${optionWords(one, titleOf)}: ${chanceText(one.onTime.probability)} on time.`,
    ),
    ...live.notOffered.map((one) => `Not offered: ${one.why}`),
  ];
}

function optionWords(
  { activity, more, units, leaveOut }: NonNullable<HandbackResult['live']>['options'][number],
  titleOf: (id: string) => string,
): string {
  const without = leaveOut.length === 0 ? '' : `without ${leaveOut.map(titleOf).join(', ')}`;
  if (activity === undefined || more === undefined) return without || 'All as planned';
  if (leaveOut.includes(activity)) return without;
  const count =
    more === 0 ? `${titleOf(activity)}: stop at ${units}` : `${titleOf(activity)}: ${more} more`;
  return without === '' ? count : `${count}, ${without}`;
}

function pointWords({ window, result }: WindowOutlook): readonly string[] {
  const titleOf = (id: string): string =>
    result.cutOffs.find((one) => one.activity === id)?.name ?? id;
  const at = (moment: Instant): string => clockWords(moment, window.zone);
  const limits = result.decisions.flatMap(({ activity, pointOfNoReturn, latestAbort }) => [
    ...(pointOfNoReturn === null
      ? []
      : [`${window.id}: point of no return of ${titleOf(activity)} ${at(pointOfNoReturn)}.`]),
    ...(latestAbort === null
      ? []
      : [`${window.id}: latest abandonment of ${titleOf(activity)} ${at(latestAbort)}.`]),
  ]);
  const go = result.goPoints.map(
    (one) =>
      `${window.id}: go or no go ${at(one.at)}, ${one.name} (${one.holder === '' ? 'nobody is named to decide' : one.holder})${one.tooLateFor.length === 0 ? '' : `; too late for ${one.tooLateFor.map(titleOf).join(', ')}`}.`,
  );
  return [...limits, ...go];
}

const workWords = ({ title, activity, units }: NotPlaced): string =>
  `${title} (${activity})${units === undefined ? '' : `, ${units} units`}`;

/** What is left open at handback: work without a place, lines, limits on speed. */
function openWords({ window, result }: WindowOutlook): readonly string[] {
  return [
    ...result.notPlaced.map(
      (one) =>
        `${window.id}: not placed: ${workWords(one)}${one.fixedHere ? ', meant for this window' : ''}.`,
    ),
    ...[result.whole, ...result.lines].flatMap((one) =>
      one.notMadeGood.length === 0
        ? []
        : [
            `${window.id}: ${one.line === '' ? 'the window' : `line ${one.line}`} is not to be handed back: ${one.notMadeGood.join(', ')} is opened and not made good here.`,
          ],
    ),
    ...result.speedLimits.map(
      (one) =>
        `${window.id}: handed back at ${one.limit.value} ${one.limit.unit} after ${one.title}, ${one.liftedBy === null ? 'and no planned work lifts it' : `until ${one.liftedBy.activity}${one.liftedBy.window === null ? '' : ` in ${one.liftedBy.window}`}`}.`,
    ),
  ];
}

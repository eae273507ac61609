import {
  clockWords,
  dueWords,
  durationText,
  minutesBetween,
  type Instant,
} from '../../calendar/index.js';
import { cautions, type AccessWindow, type Placement, type Plan } from '../../model/index.js';
import { certificateWords } from '../../planner/certificate-words.js';
import type { Allocation, KeyDateForecast } from '../../planner/search/types.js';
import { chanceText, type HandbackResult } from '../../risk/index.js';
import { changeWords, planChanges } from '../plan-out/plan-changes.js';
import { planNameText, type PlanName } from '../plan-out/plan-name.js';
import { workText } from '../plan-out/plan-sheets.js';
import type { Report, ReportTable } from './report.js';

/** What a summary of a plan of work is made from. */
export interface SummaryBasis {
  readonly plan: Plan;
  readonly allocation: Allocation;
  readonly named: PlanName;
  /** Name of the document. */
  readonly document: string;
  readonly madeAt: Instant;
  /** The outlook of windows that take work; of those that are not here no margin and no chance is known. */
  readonly handbacks: readonly HandbackResult[];
  /** What of the plan no longer holds in the tables as they are, in words. */
  readonly broken: readonly string[];
  /** The plan that changes are told against; absent: none are. */
  readonly against?: { readonly named: PlanName; readonly placements: readonly Placement[] };
}

const verdicts: Readonly<Record<HandbackResult['verdict'], string>> = {
  held: 'held',
  'chance-low': 'chance low',
  eaten: 'margin eaten into',
  overrun: 'overrun',
};

/** A plan of work for a meeting, on a page: the answer, what is late, windows with their work, key dates, what changed. */
export function summaryReport(basis: SummaryBasis): Report {
  const { plan, named, document, madeAt, against, allocation, broken } = basis;
  const { unstated, certificate } = allocation;
  const idle = idleWindows(basis);
  return {
    title: 'Plan of work: summary',
    fileName: `summary ${named.name ?? document}`,
    facts: [
      { label: 'Document', value: document },
      { label: 'Plan of work', value: planNameText(named, plan.zone) },
      { label: 'Answer', value: answerText(basis) },
      { label: 'Late or not held', value: lateText(basis) },
      ...(broken.length > 0
        ? [{ label: 'No longer holds', value: `${broken.length}, listed below` }]
        : []),
      {
        label: 'How good',
        value: certificate.verified
          ? `${certificateWords(allocation)}; a separate check found no rule broken`
          : 'the separate check found a fault: do not use this plan',
      },
      { label: 'Windows without work', value: idle.length === 0 ? 'none' : idle.join(', ') },
      ...(against
        ? [{ label: 'Changes since', value: planNameText(against.named, plan.zone) }]
        : []),
      { label: 'Made', value: `${clockWords(madeAt, plan.zone)} (${plan.zone})` },
    ],
    tables: [
      keyDateTable(basis),
      windowTable(basis),
      leftOverTable(basis),
      ...(against ? [changeTable(basis, against)] : []),
    ].filter((table) => table.rows.length > 0),
    lists: [
      {
        title: 'Not said, so nobody can call this plan safe to run',
        items: unstated.map((item) => item.text),
      },
      { title: 'No longer holds in the tables as they are', items: broken },
    ].filter((item) => item.items.length > 0),
    cautions,
  };
}

const count = (n: number, text: string, many = `${text}s`): string =>
  `${n} ${n === 1 ? text : many}`;

function answerText({ allocation, plan }: SummaryBasis): string {
  const { keyDates, unplaced, finishesAt, windowsUsed } = allocation;
  const met = keyDates.filter((date) => date.met).length;
  return [
    ...(keyDates.length > 0 ? [`${met} of ${count(keyDates.length, 'key date')} met`] : []),
    unplaced.length === 0
      ? 'all work is placed'
      : `${count(unplaced.length, 'activity', 'activities')} left over in whole or part`,
    `${count(windowsUsed, 'window')} used`,
    ...(finishesAt === null ? [] : [`the last work finishes ${clockWords(finishesAt, plan.zone)}`]),
  ].join('; ');
}

function lateText({ allocation, handbacks }: SummaryBasis): string {
  const late = allocation.keyDates.filter((date) => !date.met).map((date) => date.package);
  const open = handbacks
    .filter((handback) => handback.verdict !== 'held')
    .map((handback) => `${handback.window} (${verdicts[handback.verdict]})`);
  const parts = [
    ...(late.length > 0 ? [`key dates of ${late.join(', ')}`] : []),
    ...(open.length > 0 ? [`windows ${open.join(', ')}`] : []),
  ];
  if (parts.length > 0) return parts.join('; ');
  return handbacks.length === 0 ? 'no key date; margins and chances are not worked out' : 'nothing';
}

/** Windows that could take work and have none. */
function idleWindows({ plan, allocation }: SummaryBasis): string[] {
  const used = new Set(allocation.placements.map((placement) => placement.window));
  return plan.windows
    .filter((window) => window.status !== 'withdrawn' && !used.has(window.id))
    .map((window) => window.id);
}

function keyDateTable({ plan, allocation }: SummaryBasis): ReportTable {
  return {
    title: 'Key dates',
    columns: ['package', 'due', 'forecast', 'float or lateness', ''],
    figures: [3],
    rows: allocation.keyDates
      .toSorted((a, b) => Number(a.met) - Number(b.met) || a.due - b.due)
      .map((date) => [
        date.package,
        dueWords(date.due, plan.zone),
        date.forecast === null ? 'not all placed' : clockWords(date.forecast, plan.zone),
        floatWords(date),
        date.met ? 'met' : 'MISSED',
      ]),
  };
}

function floatWords({ floatMinutes, floatAtLeast, due, forecast, met }: KeyDateForecast): string {
  if (!met) return forecast === null ? '' : `${durationText(minutesBetween(due, forecast))} late`;
  return floatMinutes === null
    ? ''
    : `${floatAtLeast ? 'at least ' : ''}${durationText(floatMinutes)}`;
}

function windowTable({ plan, allocation, handbacks }: SummaryBasis): ReportTable {
  const outlook = new Map(handbacks.map((handback) => [handback.window, handback]));
  const rows = plan.windows.flatMap((window): string[][] => {
    const own = allocation.placements.filter((placement) => placement.window === window.id);
    if (own.length === 0) return [];
    const found = outlook.get(window.id);
    return [
      [
        window.status === 'confirmed' ? window.id : `${window.id}, ${window.status}`,
        bookedText(window),
        workText(own),
        found
          ? `${durationText(found.marginMinutes)} of ${durationText(found.requiredMinutes)}`
          : '',
        found ? chanceText(found.simulation.outlook.onTime.probability) : '',
        found ? verdicts[found.verdict] : 'not worked out',
      ],
    ];
  });
  const outside = allocation.placements.filter((placement) => placement.window === null);
  return {
    title: 'Windows and their work; confirmed where nothing else is said',
    columns: ['window', 'booked', 'work', 'margin of required', 'on time', 'handback'],
    figures: [3, 4],
    unbroken: [1, 5],
    rows: [
      ...rows,
      ...(outside.length === 0 ? [] : [['outside', '', workText(outside), '', '', '']]),
    ],
  };
}

/** `Sat 6 Mar 2027 22:50 to Sun 08:40`, with the whole date of an end that the day of the week does not name alone. */
function bookedText({ start, end, zone }: AccessWindow): string {
  const until = clockWords(end, zone);
  const [day, , , , ...clock] = until.split(' ');
  const isNear = minutesBetween(start, end) < 6 * 1440;
  return `${clockWords(start, zone)} to ${isNear ? [day, ...clock].join(' ') : until}`;
}

function leftOverTable({ plan, allocation }: SummaryBasis): ReportTable {
  const titles = new Map(plan.activities.map((activity) => [activity.id, activity.title]));
  return {
    title: 'Left over',
    columns: ['activity', 'title', 'why'],
    figures: [],
    rows: allocation.unplaced.map((item) => [
      item.activity,
      titles.get(item.activity) ?? '',
      item.reasons.map((reason) => reason.text).join(' '),
    ]),
  };
}

function changeTable(
  { plan, allocation }: SummaryBasis,
  against: NonNullable<SummaryBasis['against']>,
): ReportTable {
  const changes = planChanges(plan, against.placements, allocation.placements);
  const none = [['none', 'every piece lies as it did, to the minute', '', '']];
  return {
    title: `Changed since ${planNameText(against.named, plan.zone)}`,
    columns: ['activity', 'change', 'was', 'is'],
    figures: [],
    rows:
      changes.length === 0
        ? none
        : changes.map((change) => [
            change.activity,
            changeWords[change.kind],
            change.was,
            change.is,
          ]),
  };
}

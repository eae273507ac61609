import { durationText, minutesBetween, type Instant } from '../../calendar/index.js';
import {
  cautions,
  joined,
  together,
  type Phrase,
  type Placement,
  type Plan,
  type Told,
} from '../../model/index.js';
import { certificateSaid } from '../../planner/certificate-words.js';
import type { Allocation, KeyDateForecast } from '../../planner/search/types.js';
import type { HandbackResult } from '../../risk/index.js';
import { changeWords, planMoves } from '../plan-out/plan-changes.js';
import type { PlanName } from '../plan-out/plan-name.js';
import { workText } from '../plan-out/plan-sheets.js';
import { liesAt } from './lies-at.js';
import { planNamed } from './plan-named.js';
import type { ReportWord } from './english/words.js';
import type { Report, ReportTable } from './report.js';
import { cautionsSaid, say, word, words } from './say.js';

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
  /** What of the plan no longer holds in the tables as they are. */
  readonly broken: readonly Told[];
  /** The plan that changes are told against; absent: none are. */
  readonly against?: { readonly named: PlanName; readonly placements: readonly Placement[] };
}

const verdicts: Readonly<Record<HandbackResult['verdict'], ReportWord>> = {
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
    title: word('Plan of work: summary'),
    fileName: say('summary-file', { name: named.name ?? document }),
    facts: [
      { label: word('Document'), value: document },
      { label: word('Plan of work'), value: planNamed(named, plan.zone) },
      { label: word('Answer'), value: answerText(basis) },
      { label: word('Late or not held'), value: lateText(basis) },
      ...(broken.length > 0
        ? [
            {
              label: word('No longer holds'),
              value: say('count-listed-below', { number: broken.length }),
            },
          ]
        : []),
      {
        label: word('How good'),
        value: certificate.verified
          ? say('good-and-checked', { known: certificateSaid(allocation) })
          : word('the separate check found a fault: do not use this plan'),
      },
      {
        label: word('Windows without work'),
        value: idle.length === 0 ? word('none') : idle.join(', '),
      },
      ...(against
        ? [{ label: word('Changes since'), value: planNamed(against.named, plan.zone) }]
        : []),
      { label: word('Made'), value: say('moment-in-zone', { at: madeAt, zone: plan.zone }) },
    ],
    tables: [
      keyDateTable(basis),
      windowTable(basis),
      leftOverTable(basis),
      ...(against ? [changeTable(basis, against)] : []),
    ].filter((table) => table.rows.length > 0),
    lists: [
      { title: word('Not said, so nobody can call this plan safe to run'), items: unstated },
      { title: word('No longer holds in the tables as they are'), items: broken },
    ].filter((item) => item.items.length > 0),
    cautions: cautionsSaid(cautions),
  };
}

function answerText({ allocation, plan }: SummaryBasis): Phrase {
  const { keyDates, unplaced, finishesAt, windowsUsed } = allocation;
  const met = keyDates.filter((date) => date.met).length;
  return joined(
    [
      ...(keyDates.length > 0 ? [say('key-dates-met', { met, of: keyDates.length })] : []),
      unplaced.length === 0
        ? word('all work is placed')
        : say('activities-left-over', { number: unplaced.length }),
      say('windows-used', { number: windowsUsed }),
      ...(finishesAt === null ? [] : [say('last-work-ends', { at: finishesAt, zone: plan.zone })]),
    ],
    '; ',
  );
}

function lateText({ allocation, handbacks }: SummaryBasis): Phrase {
  const late = allocation.keyDates.filter((date) => !date.met).map((date) => date.package);
  const open = handbacks
    .filter((handback) => handback.verdict !== 'held')
    .map(({ window, verdict }) => ({ window, why: word(verdicts[verdict]) }));
  const parts = [
    ...(late.length > 0 ? [say('key-dates-late', { names: late })] : []),
    ...(open.length > 0 ? [say('windows-not-held', { windows: open })] : []),
  ];
  if (parts.length > 0) return joined(parts, '; ');
  return word(
    handbacks.length === 0 ? 'no key date; margins and chances are not worked out' : 'nothing',
  );
}

/** Windows that could take work and have none. */
function idleWindows({ plan, allocation }: SummaryBasis): string[] {
  const used = new Set(allocation.placements.map((placement) => placement.window));
  return plan.windows
    .filter((window) => window.status !== 'withdrawn' && !used.has(window.id))
    .map((window) => window.id);
}

function keyDateTable({ plan: { zone }, allocation }: SummaryBasis): ReportTable {
  return {
    title: word('Key dates'),
    columns: [...words('package', 'due', 'forecast', 'float or lateness'), ''],
    figures: [3],
    rows: allocation.keyDates
      .toSorted((a, b) => Number(a.met) - Number(b.met) || a.due - b.due)
      .map((date) => [
        date.package,
        say('due-moment', { at: date.due, zone }),
        date.forecast === null
          ? word('not all placed')
          : say('moment', { at: date.forecast, zone }),
        floatWords(date),
        word(date.met ? 'met' : 'MISSED'),
      ]),
  };
}

function floatWords({ floatMinutes, floatAtLeast, due, forecast, met }: KeyDateForecast): Phrase {
  if (!met)
    return forecast === null
      ? ''
      : say('late-by-minutes', { minutes: minutesBetween(due, forecast) });
  if (floatMinutes === null) return '';
  return floatAtLeast
    ? say('at-least-minutes', { minutes: floatMinutes })
    : durationText(floatMinutes);
}

function windowTable({ plan, allocation, handbacks }: SummaryBasis): ReportTable {
  const outlook = new Map(handbacks.map((handback) => [handback.window, handback]));
  const rows = plan.windows.flatMap((window): (readonly Phrase[])[] => {
    const { id, status, start, end, zone } = window;
    const own = allocation.placements.filter((placement) => placement.window === id);
    if (own.length === 0) return [];
    const found = outlook.get(id);
    return [
      [
        status === 'confirmed' ? id : joined([id, word(status)], ', '),
        say('booked-stretch', { start: { at: start, zone }, end: { at: end, zone } }),
        workText(own),
        found
          ? say('margin-of-required', {
              margin: found.marginMinutes,
              required: found.requiredMinutes,
            })
          : '',
        found ? say('chance', { onTime: found.simulation.outlook.onTime.probability }) : '',
        word(found ? verdicts[found.verdict] : 'not worked out'),
      ],
    ];
  });
  const outside = allocation.placements.filter((placement) => placement.window === null);
  return {
    title: word('Windows and their work; confirmed where nothing else is said'),
    columns: words('window', 'booked', 'work', 'margin of required', 'on time', 'handback'),
    figures: [3, 4],
    unbroken: [1, 5],
    rows: [
      ...rows,
      ...(outside.length === 0 ? [] : [[word('outside'), '', workText(outside), '', '', '']]),
    ],
  };
}

function leftOverTable({ plan, allocation }: SummaryBasis): ReportTable {
  const titles = new Map(plan.activities.map((activity) => [activity.id, activity.title]));
  return {
    title: word('Left over'),
    columns: words('activity', 'title', 'why'),
    figures: [],
    rows: allocation.unplaced.map((item) => [
      item.activity,
      titles.get(item.activity) ?? '',
      together(item.reasons),
    ]),
  };
}

function changeTable(
  { plan, allocation }: SummaryBasis,
  against: NonNullable<SummaryBasis['against']>,
): ReportTable {
  const moves = planMoves(plan, against.placements, allocation.placements);
  return {
    title: say('changed-since', { plan: planNamed(against.named, plan.zone) }),
    columns: words('activity', 'change', 'was', 'is'),
    figures: [],
    rows:
      moves.length === 0
        ? [[word('none'), word('every piece lies as it did, to the minute'), '', '']]
        : moves.map(({ activity, kind, was, is }) => [
            activity,
            word(changeWords[kind]),
            liesAt(plan, was),
            liesAt(plan, is),
          ]),
  };
}

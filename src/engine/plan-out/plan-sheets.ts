// A plan of work as tables that leave the program. The first of them is read back in by src/tables/kinds/placements.ts.
import { durationText, isoText, minutesBetween, type Instant } from '../../calendar/index.js';
import {
  byTime,
  cautions,
  together,
  type Placement,
  type Plan,
  type SayPhrase,
  type Told,
} from '../../model/index.js';
import { certificateSaid } from '../../planner/certificate-words.js';
import type { Allocation } from '../../planner/search/types.js';
import { outsideText } from '../../tables/kinds/placements.js';
import type { ResultTable } from '../../tables/write/export-tables.js';
import { liesAt } from '../report/lies-at.js';
import { planNamed } from '../report/plan-named.js';
import { cautionsSaid, say, word, words } from '../report/say.js';
import { changeWords, planMoves } from './plan-changes.js';
import type { PlanName } from './plan-name.js';

/** A plan of work to be taken out, with what is said of it. */
export interface PlanOut {
  readonly plan: Plan;
  readonly allocation: Allocation;
  readonly named: PlanName;
  /** Name of the document. */
  readonly document: string;
  /** Another plan that changes are told against; absent: none are. */
  readonly against?: { readonly named: PlanName; readonly placements: readonly Placement[] };
  /** What of the plan no longer holds in the tables as they are. */
  readonly broken?: readonly Told[];
}

type Cell = Told | number | null;
/** A table whose words are those of whoever saves it. */
interface Sheet {
  readonly name: Told;
  readonly columns: readonly Told[];
  readonly rows: readonly (readonly Cell[])[];
}

/**
 * Every sheet of the workbook. Times are ISO 8601 with the offset of the window's own zone. The first keeps its English
 * headings, by which it is read back.
 */
export function planSheets(out: PlanOut, sayIn: SayPhrase): readonly ResultTable[] {
  return [
    placementSheet(out),
    windowSheet(out),
    keyDateSheet(out),
    leftOverSheet(out),
    ...(out.against ? [changeSheet(out, out.against)] : []),
    aboutSheet(out),
  ].map((sheet) => sheetIn(sheet, sayIn));
}

function sheetIn({ name, columns, rows }: Sheet, sayIn: SayPhrase): ResultTable {
  const cell = (value: Cell) =>
    value === null || typeof value === 'number' ? value : sayIn(value);
  return {
    name: sayIn(name),
    columns: columns.map(sayIn),
    rows: rows.map((row) => row.map(cell)),
  };
}

/** The placements with the plan's name in every row and the cautions as rows of a note alone: what the CSV file holds. */
export function placementTable(out: PlanOut, sayIn: SayPhrase): ResultTable {
  const sheet = placementSheet(out);
  const note = sheet.columns.length - 1;
  const alone = (text: Told): readonly Cell[] => [...new Array<string>(note).fill(''), text];
  const notes = [
    planNamed(out.named, out.plan.zone),
    ...brokenLines(out),
    ...cautionsSaid(cautions),
  ];
  return sheetIn({ ...sheet, rows: [...sheet.rows, ...notes.map(alone)] }, sayIn);
}

function placementSheet({ plan, allocation, named }: PlanOut): Sheet {
  const at = clockOf(plan);
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const statuses = new Map(plan.windows.map((window) => [window.id, window.status]));
  return {
    name: 'placements',
    columns: [
      ...['activity', 'window', 'from', 'to', 'units', 'package', 'title', 'minutes', 'status'],
      ...['plan', 'revision', 'plan id', 'note'],
    ],
    rows: allocation.placements
      .toSorted(byTime)
      .map((placement) => [
        placement.activity,
        placement.window ?? outsideText,
        at(placement.from, placement.window),
        at(placement.to, placement.window),
        placement.units ?? null,
        activities.get(placement.activity)?.package ?? '',
        activities.get(placement.activity)?.title ?? '',
        minutesBetween(placement.from, placement.to),
        placement.window === null ? '' : (statuses.get(placement.window) ?? ''),
        named.name ?? word('proposal, not agreed'),
        named.revision ?? null,
        named.id,
        '',
      ]),
  };
}

function windowSheet({ plan, allocation }: PlanOut): Sheet {
  return {
    name: word('windows'),
    columns: words(
      'window',
      'title',
      'status',
      'start',
      'end',
      'first work',
      'last work',
      'pieces',
      'work',
    ),
    rows: plan.windows.map((window) => {
      const own = allocation.placements
        .filter((placement) => placement.window === window.id)
        .toSorted(byTime);
      const times = [
        Math.min(...own.map((placement) => placement.from)),
        Math.max(...own.map((placement) => placement.to)),
      ];
      return [
        window.id,
        window.title,
        word(window.status),
        isoText(window.start, window.zone),
        isoText(window.end, window.zone),
        ...times.map((time) => (own.length === 0 ? '' : isoText(time, window.zone))),
        own.length,
        own.map(pieceText).join('; '),
      ];
    }),
  };
}

/** `CUT`, or `FIX x 4` for units. */
export const pieceText = ({ activity, units }: Placement): string =>
  units === undefined ? activity : `${activity} x ${units}`;

/** Work in order of its first start, each activity once with all its units: `TU20 x 36, TU30`. */
export function workText(placements: readonly Placement[]): string {
  const sums = new Map<string, number | undefined>();
  for (const { activity, units } of placements.toSorted(byTime))
    sums.set(activity, units === undefined ? undefined : (sums.get(activity) ?? 0) + units);
  return [...sums]
    .map(([activity, units]) => (units === undefined ? activity : `${activity} x ${units}`))
    .join(', ');
}

function keyDateSheet({ plan, allocation }: PlanOut): Sheet {
  return {
    name: word('key dates'),
    columns: words(
      'package',
      'due',
      'forecast',
      'float',
      'float in minutes',
      'float in windows',
      'met',
      'shares float with',
    ),
    rows: allocation.keyDates.map((date) => [
      date.package,
      isoText(date.due, plan.zone),
      date.forecast === null ? word('not all placed') : isoText(date.forecast, plan.zone),
      date.floatMinutes === null
        ? ''
        : date.floatAtLeast
          ? say('at-least-minutes', { minutes: date.floatMinutes })
          : durationText(date.floatMinutes),
      date.floatMinutes,
      date.floatWindows,
      word(date.met ? 'yes' : 'no'),
      date.sharesFloatWith.join('; '),
    ]),
  };
}

function leftOverSheet({ plan, allocation }: PlanOut): Sheet {
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return {
    name: word('left over'),
    columns: words('activity', 'package', 'title', 'reasons'),
    rows: allocation.unplaced.map((item) => [
      item.activity,
      activities.get(item.activity)?.package ?? '',
      activities.get(item.activity)?.title ?? '',
      together(item.reasons),
    ]),
  };
}

function changeSheet(
  { plan, allocation, named }: PlanOut,
  against: NonNullable<PlanOut['against']>,
): Sheet {
  return {
    name: word('changes'),
    columns: words('activity', 'change', 'was', 'is', 'plan before', 'plan now'),
    rows: planMoves(plan, against.placements, allocation.placements).map((move) => [
      move.activity,
      word(changeWords[move.kind]),
      liesAt(plan, move.was),
      liesAt(plan, move.is),
      planNamed(against.named, plan.zone),
      planNamed(named, plan.zone),
    ]),
  };
}

function aboutSheet(out: PlanOut): Sheet {
  const { plan, allocation, named, document, against } = out;
  const { certificate, unstated, notes, windowsUsed, finishesAt } = allocation;
  const unsaid = word('not said, so nobody can call the plan safe to run');
  return {
    name: word('about'),
    columns: words('what', 'value'),
    rows: [
      ...unstated.map((item) => [unsaid, item]),
      [word('document'), document],
      [word('plan of work'), planNamed(named, plan.zone)],
      ...(against ? [[word('compared with'), planNamed(against.named, plan.zone)]] : []),
      [word('windows used'), windowsUsed],
      [
        word('finishes'),
        finishesAt === null ? word('not all work is placed') : isoText(finishesAt, plan.zone),
      ],
      [
        word('how good'),
        certificate.verified
          ? say('good-and-checked', { known: certificateSaid(allocation) })
          : word('the separate check found a fault: do not use this plan'),
      ],
      ...brokenLines(out).map((text) => [word('no longer holds'), text]),
      ...notes.map((note) => [word('note'), note]),
      ...cautionsSaid(cautions).map((text) => [word('caution'), text]),
    ],
  };
}

const brokenLines = ({ broken = [] }: PlanOut): readonly Told[] =>
  broken.map((fault) => say('part-broken', { fault }));

/** A moment in the zone of the window it lies in. */
export function clockOf(
  plan: Pick<Plan, 'windows' | 'zone'>,
): (at: Instant, window: string | null) => string {
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  return (at, window) =>
    isoText(at, (window === null ? undefined : zones.get(window)) ?? plan.zone);
}

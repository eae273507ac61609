// A plan of work as tables that leave the program. The first of them is read back in by src/tables/kinds/placements.ts.
import { durationText, isoText, minutesBetween, type Instant } from '../../calendar/index.js';
import { byTime, cautions, type Placement, type Plan } from '../../model/index.js';
import { certificateWords } from '../../planner/certificate-words.js';
import type { Allocation } from '../../planner/search/types.js';
import { outsideText } from '../../tables/kinds/placements.js';
import type { ResultTable } from '../../tables/write/export-tables.js';
import { changeWords, planChanges } from './plan-changes.js';
import { planNameText, type PlanName } from './plan-name.js';

/** A plan of work to be taken out, with what is said of it. */
export interface PlanOut {
  readonly plan: Plan;
  readonly allocation: Allocation;
  readonly named: PlanName;
  /** Name of the document. */
  readonly document: string;
  /** Another plan that changes are told against; absent: none are. */
  readonly against?: { readonly named: PlanName; readonly placements: readonly Placement[] };
  /** What of the plan no longer holds in the tables as they are, in words. */
  readonly broken?: readonly string[];
}

/** Every sheet of the workbook. Times are ISO 8601 with the offset of the window's own zone. */
export function planSheets(out: PlanOut): readonly ResultTable[] {
  return [
    placementSheet(out),
    windowSheet(out),
    keyDateSheet(out),
    leftOverSheet(out),
    ...(out.against ? [changeSheet(out, out.against)] : []),
    aboutSheet(out),
  ];
}

/** The placements with the plan's name in every row and the cautions as rows of a note alone: what the CSV file holds. */
export function placementTable(out: PlanOut): ResultTable {
  const sheet = placementSheet(out);
  const note = sheet.columns.length - 1;
  const alone = (text: string) => [...new Array<string>(note).fill(''), text];
  const said = [planNameText(out.named, out.plan.zone), ...brokenLines(out), ...cautions];
  return { ...sheet, rows: [...sheet.rows, ...said.map(alone)] };
}

function placementSheet({ plan, allocation, named }: PlanOut): ResultTable {
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
        named.name ?? 'proposal, not agreed',
        named.revision ?? null,
        named.id,
        '',
      ]),
  };
}

function windowSheet({ plan, allocation }: PlanOut): ResultTable {
  return {
    name: 'windows',
    columns: [
      'window',
      'title',
      'status',
      'start',
      'end',
      'first work',
      'last work',
      'pieces',
      'work',
    ],
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
        window.status,
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

function keyDateSheet({ plan, allocation }: PlanOut): ResultTable {
  return {
    name: 'key dates',
    columns: [
      ...['package', 'due', 'forecast', 'float', 'float in minutes', 'float in windows', 'met'],
      'shares float with',
    ],
    rows: allocation.keyDates.map((date) => [
      date.package,
      isoText(date.due, plan.zone),
      date.forecast === null ? 'not all placed' : isoText(date.forecast, plan.zone),
      date.floatMinutes === null
        ? ''
        : `${date.floatAtLeast ? 'at least ' : ''}${durationText(date.floatMinutes)}`,
      date.floatMinutes,
      date.floatWindows,
      date.met ? 'yes' : 'no',
      date.sharesFloatWith.join('; '),
    ]),
  };
}

function leftOverSheet({ plan, allocation }: PlanOut): ResultTable {
  const activities = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return {
    name: 'left over',
    columns: ['activity', 'package', 'title', 'reasons'],
    rows: allocation.unplaced.map((item) => [
      item.activity,
      activities.get(item.activity)?.package ?? '',
      activities.get(item.activity)?.title ?? '',
      item.reasons.map((reason) => reason.text).join(' '),
    ]),
  };
}

function changeSheet(
  { plan, allocation, named }: PlanOut,
  against: NonNullable<PlanOut['against']>,
): ResultTable {
  const changes = planChanges(plan, against.placements, allocation.placements);
  return {
    name: 'changes',
    columns: ['activity', 'change', 'was', 'is', 'plan before', 'plan now'],
    rows: changes.map((change) => [
      change.activity,
      changeWords[change.kind],
      change.was,
      change.is,
      planNameText(against.named, plan.zone),
      planNameText(named, plan.zone),
    ]),
  };
}

function aboutSheet(out: PlanOut): ResultTable {
  const { plan, allocation, named, document, against } = out;
  const { certificate, unstated, notes, windowsUsed, finishesAt } = allocation;
  return {
    name: 'about',
    columns: ['what', 'value'],
    rows: [
      ...unstated.map((item) => ['not said, so nobody can call the plan safe to run', item.text]),
      ['document', document],
      ['plan of work', planNameText(named, plan.zone)],
      ...(against ? [['compared with', planNameText(against.named, plan.zone)]] : []),
      ['windows used', windowsUsed],
      ['finishes', finishesAt === null ? 'not all work is placed' : isoText(finishesAt, plan.zone)],
      [
        'how good',
        certificate.verified
          ? `${certificateWords(allocation)}; a separate check found no rule broken`
          : 'the separate check found a fault: do not use this plan',
      ],
      ...brokenLines(out).map((text) => ['no longer holds', text]),
      ...notes.map((note) => ['note', note.text]),
      ...cautions.map((text) => ['caution', text]),
    ],
  };
}

const brokenLines = ({ broken = [] }: PlanOut): readonly string[] =>
  broken.map((text) => `No longer holds: ${text}`);

/** A moment in the zone of the window it lies in. */
export function clockOf(
  plan: Pick<Plan, 'windows' | 'zone'>,
): (at: Instant, window: string | null) => string {
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  return (at, window) =>
    isoText(at, (window === null ? undefined : zones.get(window)) ?? plan.zone);
}

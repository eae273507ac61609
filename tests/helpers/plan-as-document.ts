// A plan written into the tables it could have been read from, for what asks about documents.
import { clockOfMinute, isoText, type Instant } from '../../src/calendar/index.js';
import type { Activity, AccessWindow, Plan, PlanDocument } from '../../src/model/index.js';
import { aDocument, minuteBook } from './documents.js';

const columns = {
  windows: 'window,title,start,end,zone,lines,from,to,isolation,status',
  work:
    'package,activity,after,minutes,minutes low,minutes high,units,done,minutes per unit,set up,make safe,lines,from,to,isolation,' +
    'resources,loud,place,not before,key date,window,made good by,occupies,may wait',
  resources: 'resource,capacity,from,to',
};

/** The document whose tables say what the plan says; isolation with times of its own is not written. */
export function planAsDocument(plan: Plan): PlanDocument {
  const at = (moment: Instant | undefined): string =>
    moment === undefined ? '' : isoText(moment, plan.zone);
  const table = (file: keyof typeof columns, rows: readonly (readonly string[])[]) => ({
    file: `${file}.csv`,
    columns: columns[file].split(','),
    rows: rows.map((row) => [...row]),
  });
  return aDocument(
    'Random',
    {
      windows: table(
        'windows',
        plan.windows.map((window) => windowRow(window, at)),
      ),
      work: table(
        'work',
        plan.activities.map((activity) => workRow(activity, at)),
      ),
      resources: table(
        'resources',
        plan.resources.flatMap(({ id, availability }) =>
          availability.map((item) => [
            id,
            String(item.capacity),
            item.dailyFromMinute === undefined
              ? at(item.from)
              : clockOfMinute(item.dailyFromMinute),
            item.dailyToMinute === undefined ? at(item.to) : clockOfMinute(item.dailyToMinute),
          ]),
        ),
      ),
    },
    { zone: plan.zone, rules: plan.rules, prices: minuteBook },
  );
}

const extentCells = (item: { extent?: { from: number; to: number } }): string[] =>
  item.extent ? [String(item.extent.from), String(item.extent.to)] : ['', ''];

function windowRow(window: AccessWindow, at: (moment: Instant) => string): string[] {
  return [
    window.id,
    window.title,
    at(window.start),
    at(window.end),
    window.zone,
    window.lines.join('; '),
    ...extentCells(window),
    window.isolation.map(({ section }) => section).join('; '),
    window.status,
  ];
}

function workRow(activity: Activity, at: (moment: Instant | undefined) => string): string[] {
  const { work } = activity;
  const after = activity.after.map(
    (link) =>
      `${link.from === 'start' ? 'start of ' : ''}${link.activity}` +
      (link.gapMinutes > 0 ? ` + ${link.gapMinutes} min` : ''),
  );
  const spread = work.spread ? [String(work.spread.low), String(work.spread.high)] : ['', ''];
  return [
    activity.package,
    activity.id,
    after.join('; '),
    ...(work.kind === 'whole'
      ? [String(work.minutes), ...spread, '', '', '', '', '']
      : [
          '',
          ...spread,
          ...[work.units, work.done, work.minutesPerUnit].map(String),
          ...[work.setUpMinutes, work.makeSafeMinutes].map(String),
        ]),
    activity.lines.join('; '),
    ...extentCells(activity),
    activity.isolation.join('; '),
    activity.resources.map((need) => `${need.resource}:${need.amount}`).join('; '),
    activity.loud ? 'yes' : 'no',
    activity.place,
    at(activity.notBefore),
    at(activity.keyDate),
    activity.window ?? '',
    Array.isArray(activity.madeGoodBy)
      ? activity.madeGoodBy.join('; ')
      : String(activity.madeGoodBy ?? ''),
    activity.occupies ?? '',
    activity.mayWait ? 'yes' : '',
  ];
}

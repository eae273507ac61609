// A plan written into the tables it could have been read from, for what asks about documents.
import { clockOfMinute, isoText, type Instant } from '../../src/calendar/index.js';
import type { Activity, AccessWindow, Plan, PlanDocument, RuleSet } from '../../src/model/index.js';
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
        plan.windows.map((one) => windowRow(one, at)),
      ),
      work: table(
        'work',
        plan.activities.map((one) => workRow(one, at)),
      ),
      resources: table(
        'resources',
        plan.resources.flatMap(({ id, availability }) =>
          availability.map((one) => [
            id,
            String(one.capacity),
            one.dailyFromMinute === undefined ? at(one.from) : clockOfMinute(one.dailyFromMinute),
            one.dailyToMinute === undefined ? at(one.to) : clockOfMinute(one.dailyToMinute),
          ]),
        ),
      ),
    },
    { zone: plan.zone, rules: plan.rules as RuleSet, prices: minuteBook },
  );
}

const extentCells = (one: { extent?: { from: number; to: number } }): string[] =>
  one.extent ? [String(one.extent.from), String(one.extent.to)] : ['', ''];

function windowRow(one: AccessWindow, at: (moment: Instant) => string): string[] {
  return [
    one.id,
    one.title,
    at(one.start),
    at(one.end),
    one.zone,
    one.lines.join('; '),
    ...extentCells(one),
    one.isolation.map(({ section }) => section).join('; '),
    one.status,
  ];
}

function workRow(one: Activity, at: (moment: Instant | undefined) => string): string[] {
  const { work } = one;
  const after = one.after.map(
    (link) =>
      `${link.from === 'start' ? 'start of ' : ''}${link.activity}` +
      (link.gapMinutes > 0 ? ` + ${link.gapMinutes} min` : ''),
  );
  const spread = work.spread ? [String(work.spread.low), String(work.spread.high)] : ['', ''];
  return [
    one.package,
    one.id,
    after.join('; '),
    ...(work.kind === 'whole'
      ? [String(work.minutes), ...spread, '', '', '', '', '']
      : [
          '',
          ...spread,
          ...[work.units, work.done, work.minutesPerUnit].map(String),
          ...[work.setUpMinutes, work.makeSafeMinutes].map(String),
        ]),
    one.lines.join('; '),
    ...extentCells(one),
    one.isolation.join('; '),
    one.resources.map((need) => `${need.resource}:${need.amount}`).join('; '),
    one.loud ? 'yes' : 'no',
    one.place,
    at(one.notBefore),
    at(one.keyDate),
    one.window ?? '',
    Array.isArray(one.madeGoodBy) ? one.madeGoodBy.join('; ') : String(one.madeGoodBy ?? ''),
    one.occupies ?? '',
    one.mayWait ? 'yes' : '',
  ];
}

import type { Instant } from '../../calendar/index.js';
import { boundsOf, type AccessWindow, type Plan } from '../../model/index.js';
import type { Conditioned } from './conditioned.js';
import { sayLive } from './live-sentences.js';
import { grantStep, handedBackStep, lineGrantStep, type Actual, type Doubt } from '../types.js';

/**
 * What was recorded and cannot be so or was passed over, and what nobody recorded and had to be taken for granted: each
 * bears on the forecast, so none of it goes unsaid. `booked`: the window before an earlier end of it was agreed.
 */
export function doubtsOf(
  plan: Plan,
  window: AccessWindow,
  booked: AccessWindow,
  now: Conditioned,
  actuals: readonly Actual[],
  at: Instant,
): readonly Doubt[] {
  const { meanings } = now.built;
  const titleOf = (id: string): string =>
    plan.activities.find((activity) => activity.id === id)?.title ?? id;
  return [
    ...grants(window, now, actuals),
    ...handedBackOpen(plan, now, actuals, at),
    ...actuals.flatMap(ofOne),
  ];

  function ofOne(actual: Actual): Doubt[] {
    const { activity, step, startedAt, finishedAt, unitsAt, unitsDone, wantedBy, agreedEnd } =
      actual;
    const name = activity === undefined ? (step ?? '') : titleOf(activity);
    const times = [startedAt, finishedAt, unitsAt].filter((item) => item !== undefined);
    const own = meanings.filter((meaning) =>
      activity === undefined ? meaning.name === step : meaning.activity === activity,
    );
    const found: Doubt[] = [];
    if (activity !== undefined && own.length === 0)
      return [
        {
          code: 'not-here',
          ...sayLive('record-not-here', { name, window: window.id }),
        },
      ];
    const line = window.lines.find((text) => lineGrantStep(text) === step);
    if (step !== undefined && own.length === 0 && line === undefined && step !== handedBackStep)
      found.push({
        code: 'line-not-here',
        ...sayLive('record-no-step', { step, window: window.id }),
      });
    if (times.some((time) => time > at))
      found.push({
        code: 'not-yet',
        ...sayLive('record-not-yet', { name }),
      });
    if (times.some((time) => time < window.start))
      found.push({
        code: 'before-window',
        ...sayLive('record-before-window', { name, window: window.id }),
      });
    const units = own.filter((meaning) => meaning.part === 'unit').length;
    if ((unitsDone ?? 0) > 0 && units === 0)
      found.push({
        code: 'not-repeated',
        ...sayLive('record-not-repeated', { name, units: unitsDone! }),
      });
    else if ((unitsDone ?? 0) > units)
      found.push({
        code: 'more-units',
        ...sayLive('record-more-units', {
          name,
          units: unitsDone!,
          planned: units,
          window: window.id,
        }),
      });
    if (wantedBy !== undefined && wantedBy >= window.end)
      found.push({
        code: 'asked-too-late',
        ...sayLive('asked-too-late', {}),
      });
    if (agreedEnd !== undefined && agreedEnd >= booked.end)
      found.push({
        code: 'agreed-too-late',
        ...sayLive('agreed-too-late', {}),
      });
    return found;
  }
}

/**
 * The line is recorded as handed back while nothing says that work is over: what was begun, what makes it good, and what a
 * shift may not leave out.
 */
function handedBackOpen(
  plan: Plan,
  { built }: Conditioned,
  actuals: readonly Actual[],
  at: Instant,
): Doubt[] {
  const past = (moment: Instant | undefined): boolean => moment !== undefined && moment <= at;
  if (!actuals.some((actual) => actual.step === handedBackStep && past(actual.finishedAt)))
    return [];
  const here = new Set(built.meanings.flatMap((meaning) => meaning.activity ?? []));
  const rows = plan.activities.filter((activity) => here.has(activity.id));
  const seen = new Map(
    actuals.flatMap((actual) =>
      actual.activity === undefined ? [] : [[actual.activity, actual] as const],
    ),
  );
  const isOver = ({ id, work }: Plan['activities'][number]): boolean =>
    past(seen.get(id)?.finishedAt) ||
    // Units that are counted are made safe one by one: it may stop after any of them.
    (work.kind === 'units' && (seen.get(id)?.unitsDone ?? 0) > 0);
  const begun = new Set(rows.filter(({ id }) => seen.has(id)).map((row) => row.id));
  const needed = new Set(
    boundsOf(plan.activities).flatMap((bound) => (begun.has(bound.activity) ? bound.members : [])),
  );
  const mayBeOut = (activity: Plan['activities'][number]): boolean =>
    (activity.mayWait ?? false) || activity.work.kind === 'units';
  const open = rows.filter(
    (row) => (begun.has(row.id) || needed.has(row.id) || !mayBeOut(row)) && !isOver(row),
  );
  if (open.length === 0) return [];
  const names = open.map((activity) => activity.title);
  return [
    {
      code: 'handed-back-open',
      ...sayLive('handed-back-open', { names }),
    },
  ];
}

/** What was granted by no record and no inference, and is counted as granted at the moment of the forecast. */
function grants(
  window: AccessWindow,
  { built, states }: Conditioned,
  actuals: readonly Actual[],
): Doubt[] {
  const stateOf = (name: string) =>
    states[built.meanings.findIndex((meaning) => meaning.name === name)];
  const expected = new Set(
    actuals.flatMap((actual) => (actual.expectedAt === undefined ? [] : (actual.step ?? []))),
  );
  if (stateOf(grantStep) === 'to-come')
    return [
      {
        code: 'not-granted',
        ...sayLive('grant-not-recorded', {}),
      },
    ];
  return window.lines
    .map(lineGrantStep)
    .filter((name) => stateOf(name) === 'to-come' && !expected.has(name))
    .map((name) => ({
      code: 'line-not-granted',
      ...sayLive('line-grant-not-recorded', { name }),
    }));
}

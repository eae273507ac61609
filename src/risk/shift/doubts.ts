import type { Instant } from '../../calendar/index.js';
import { boundsOf, type AccessWindow, type Plan } from '../../model/index.js';
import type { Conditioned } from './conditioned.js';
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
          text: `${name} is not planned in ${window.id}: its record is not used.`,
        },
      ];
    const line = window.lines.find((text) => lineGrantStep(text) === step);
    if (step !== undefined && own.length === 0 && line === undefined && step !== handedBackStep)
      found.push({
        code: 'line-not-here',
        text: `${window.id} has no step "${step}" for the work planned in it: its record is not used.`,
      });
    if (times.some((time) => time > at))
      found.push({
        code: 'not-yet',
        text: `${name}: a time after the moment of the forecast is recorded. It is not counted yet.`,
      });
    if (times.some((time) => time < window.start))
      found.push({
        code: 'before-window',
        text: `${name}: a time before ${window.id} opens is recorded. It is counted as it stands: check it.`,
      });
    const units = own.filter((meaning) => meaning.part === 'unit').length;
    if ((unitsDone ?? 0) > 0 && units === 0)
      found.push({
        code: 'not-repeated',
        text: `${name} is not repeated work: the ${unitsDone} units recorded of it are not used.`,
      });
    else if ((unitsDone ?? 0) > units)
      found.push({
        code: 'more-units',
        text: `${name}: ${unitsDone} units are recorded and ${units} are planned in ${window.id}. It is counted as all done: check the count.`,
      });
    if (wantedBy !== undefined && wantedBy >= window.end)
      found.push({
        code: 'asked-too-late',
        text: `The line was asked for no earlier than the end that counts: that changes nothing.`,
      });
    if (agreedEnd !== undefined && agreedEnd >= booked.end)
      found.push({
        code: 'agreed-too-late',
        text: `The end that was agreed is no earlier than the booked end: that changes nothing.`,
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
  const names = open.map((activity) => activity.title).join(', ');
  return [
    {
      code: 'handed-back-open',
      text: `The line is recorded as handed back, and nothing says that ${names} ${open.length === 1 ? 'is' : 'are'} over. Every worksite must be given up first: ask at once.`,
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
        text: 'No grant of the possession is recorded: it is counted as granted at this moment.',
      },
    ];
  return window.lines
    .map(lineGrantStep)
    .filter((name) => stateOf(name) === 'to-come' && !expected.has(name))
    .map((name) => ({
      code: 'line-not-granted',
      text: `${name}: not recorded, and nobody said when. It is counted as granted at this moment.`,
    }));
}

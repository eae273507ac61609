import { dayAt, dayText, MINUTE } from '../../../calendar/index.js';
import type { Resource } from '../../../model/index.js';
import { callOuts, parseMoney } from '../../../price/index.js';
import { sitePlan } from '../../site/site-plan.js';
import { refused, type Draft } from '../draft.js';
import { withRow } from '../edits.js';
import { clearAt, unitsIn } from '../plans.js';
import { refit } from '../refit.js';
import { sayOption } from '../say-option.js';
import { activityOf, elsewhere, type Situation } from '../situation.js';
import type { RefusedOption } from '../types.js';

/** One more of each limited resource of the window, for the days of the window. */
export function extraResources(at: Situation): (Draft | RefusedOption)[] {
  const { window, plan, planned } = at;
  const used = new Set(
    planned.placements
      .filter((placement) => placement.window === window.id)
      .flatMap((placement) =>
        activityOf(at, placement.activity).resources.map((need) => need.resource),
      ),
  );
  const limited = plan.resources.filter((resource) => used.has(resource.id));
  if (limited.length === 0)
    return [
      refused(
        'extra',
        'extra-resource',
        sayOption('extra-plant-or-gang'),
        'nothing-to-vary',
        sayOption('nothing-limited'),
      ),
    ];
  const units = unitsIn(window.id, planned.placements);
  const others = elsewhere(at);
  const tight = refit(plan, window, units, others, at.time);
  return limited.map((given): Draft | RefusedOption => {
    const resource = given.id;
    const id = `extra ${resource}`;
    const name = sayOption('one-more-of', { resource });
    const none = refused(
      id,
      'extra-resource',
      name,
      'nothing-to-vary',
      sayOption('another-no-sooner', { resource, window: window.id }),
    );
    if (!isShort(at, given, units)) return none;
    const document = withRow(at.document, 'resources', {
      resource,
      capacity: '1',
      from: dayText(dayAt(window.start, plan.zone)),
      to: dayText(dayAt(window.end, plan.zone)),
    });
    const next = sitePlan(document);
    const here = refit(next.plan, window, units, others, at.time);
    const gained = clearAt(window, tight.placements) - clearAt(window, here.placements);
    if (here.unplaced.length > 0 || tight.unplaced.length > 0 || gained <= 0) return none;
    const placements = [...others, ...here.placements];
    const paid = (from: typeof planned): number =>
      callOuts(window, { ...from.plan, placements: from.placements, ...at })
        .filter((callOut) => callOut.resource === resource)
        .reduce((sum, callOut) => sum + parseMoney(callOut.amount, at.prices), 0);
    const work = { ...next, window, placements };
    return {
      id,
      kind: 'extra-resource',
      name,
      changes: [
        sayOption('one-more-on-days', {
          resource,
          window: window.id,
          minutes: gained / MINUTE,
        }),
      ],
      document,
      ...next,
      here: [work],
      placements,
      unplaced: [],
      keyDates: [],
      lines: [],
      turn: { what: sayOption('what-more-costs', { resource }), minor: paid(work) - paid(planned) },
      notes: [
        given.ratePerHour === undefined
          ? sayOption('one-more-no-rate', { resource })
          : sayOption('one-more-paid'),
      ],
    };
  });
}

/** Whether all work of the window that uses a resource could ever want more of it at once than there is. */
function isShort(at: Situation, resource: Resource, units: ReadonlyMap<string, number>): boolean {
  const wanted = [...units.keys()]
    .flatMap((id) => activityOf(at, id).resources)
    .filter((need) => need.resource === resource.id)
    .reduce((sum, need) => sum + need.amount, 0);
  const there = resource.availability
    .filter((row) => (row.from ?? -Infinity) <= at.window.start)
    .filter((row) => (row.to ?? Infinity) >= at.window.end)
    .filter((row) => row.dailyFromMinute === undefined && row.dailyToMinute === undefined)
    .reduce((sum, row) => sum + row.capacity, 0);
  return wanted > there;
}

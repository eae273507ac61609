import { addMinutes, dayAt, dayText } from '../../../calendar/index.js';
import type { Placement } from '../../../planner/fit/types.js';
import { minutesInOneVisit, type Phrase, type PlanDocument } from '../../../model/index.js';
import { reBookingCost } from '../../../price/index.js';
import { movedIn } from '../changes.js';
import { reasonOf, refused, type Draft } from '../draft.js';
import { cellOf, withCells, withRow } from '../edits.js';
import { freedIn } from '../freed.js';
import { intoNextWindows, planFurther } from '../plan-further.js';
import { unitsIn, withoutUnits, type Planned } from '../plans.js';
import { sayOption } from '../say-option.js';
import { activityOf, type Situation } from '../situation.js';
import type { OptionWish, RefusedOption } from '../types.js';
import { ownOption } from './own-option.js';

/** The document with the window longer and more of a resource on its days, as wished. */
function documentOf(at: Situation, wish: OptionWish): PlanDocument {
  const { plan, window } = at;
  const { longerMinutes = 0, extra, leaveOut: out = [] } = wish;
  const document = freedIn(
    at.document,
    at,
    out.map((item) => item.activity),
  );
  const longer =
    longerMinutes > 0
      ? withCells(document, 'windows', 'window', window.id, {
          end: cellOf(addMinutes(window.end, longerMinutes), window.zone),
        })
      : document;
  return extra
    ? withRow(longer, 'resources', {
        resource: extra.resource,
        capacity: String(extra.count),
        from: dayText(dayAt(window.start, plan.zone)),
        to: dayText(dayAt(addMinutes(window.end, longerMinutes), plan.zone)),
      })
    : longer;
}

/** What of the wish cannot be had; undefined when all of it can be tried. */
function faultOf(at: Situation, wish: OptionWish): Phrase | undefined {
  const { longerMinutes, extra, leaveOut = [], cutOffAt } = wish;
  const { window, plan, planned } = at;
  if (longerMinutes === undefined && !extra && leaveOut.length === 0 && cutOffAt === undefined)
    return sayOption('wish-changes-nothing');
  if (longerMinutes !== undefined && !(Number.isInteger(longerMinutes) && longerMinutes > 0))
    return sayOption('longer-by-whole-minutes');
  if (extra && !plan.resources.some((resource) => resource.id === extra.resource))
    return sayOption('no-such-resource', extra);
  if (extra && !(Number.isInteger(extra.count) && extra.count > 0))
    return sayOption('more-by-whole-numbers');
  if (leaveOut.length > 0 && cutOffAt !== undefined) return sayOption('units-or-cut-off');
  if (cutOffAt !== undefined) {
    const end = addMinutes(window.end, longerMinutes ?? 0);
    if (cutOffAt < window.start || cutOffAt > end)
      return sayOption('cut-off-not-in', { window: window.id });
  }
  const here = unitsIn(window.id, planned.placements);
  for (const { activity, units } of leaveOut) {
    const most = here.get(activity);
    if (most === undefined) return sayOption('no-work-of-it-in', { activity, window: window.id });
    if (!(Number.isInteger(units) && units > 0 && units <= most))
      return sayOption('may-leave-out', { activity, most, window: window.id });
  }
  const out = new Set(leaveOut.map((item) => item.activity));
  const waits = [...here.keys()].filter(
    (id) => !out.has(id) && activityOf(at, id).after.some((link) => out.has(link.activity)),
  );
  return waits.length > 0
    ? sayOption('waits-for-left-out', { waits, window: window.id })
    : undefined;
}

/** The plan of a draft with work taken out of its window, which goes to the windows that follow. */
function leaveOut(at: Situation, draft: Draft, wish: OptionWish): Draft | RefusedOption {
  const out = wish.leaveOut ?? [];
  const work = draft.here[0]!;
  const { window } = work;
  const shorter = out.reduce<readonly Placement[]>(
    (placements, { activity, units }) =>
      activityOf(at, activity).work.kind === 'units'
        ? withoutUnits(placements, window.id, activityOf(at, activity), units)
        : placements.filter(
            (placement) => placement.window !== window.id || placement.activity !== activity,
          ),
    draft.placements,
  );
  const [only] = out;
  const next =
    only && out.length === 1
      ? intoNextWindows(
          draft.plan,
          window.end,
          shorter,
          activityOf(at, only.activity),
          only.units,
          at.time,
        )
      : null;
  const free = new Set(out.map((item) => item.activity));
  const found: Planned = next
    ? { placements: next, unplaced: [], keyDates: [] }
    : planFurther(draft.plan, window.end, shorter, free, at.request.allocation, at.time);
  if (found.unplaced.length > 0)
    return refused(draft.id, 'own', draft.name, 'infeasible', reasonOf(found.unplaced));
  const moved = movedIn(found.placements, draft.plan, at.planned.placements);
  const units = out.reduce((sum, item) => sum + item.units, 0);
  const visits = moved.filter((item) => free.has(item.activity)).length;
  const line = reBookingCost(units, visits, at.prices);
  return {
    ...draft,
    ...found,
    here: [{ ...work, placements: found.placements }],
    lines: [...draft.lines, ...(line ? [{ part: 're-booking' as const, ...line }] : [])],
    notes: line ? draft.notes : [...draft.notes, sayOption('no-price-for-left-over')],
  };
}

/** What the wish changes. */
function changesOf(at: Situation, wish: OptionWish): readonly Phrase[] {
  const { longerMinutes, extra, leaveOut: out = [] } = wish;
  const window = at.window.id;
  return [
    ...(longerMinutes === undefined
      ? []
      : [
          sayOption('booked-to', {
            window,
            end: { at: addMinutes(at.window.end, longerMinutes), zone: at.window.zone },
          }),
        ]),
    ...(extra ? [sayOption('more-on-days', { ...extra, window })] : []),
    ...out.map(({ activity, units }) =>
      activityOf(at, activity).work.kind === 'units'
        ? sayOption('units-less-in', { units, activity, window })
        : sayOption('left-out-of', {
            activity,
            window,
            minutes: minutesInOneVisit(activityOf(at, activity).work),
          }),
    ),
    ...out.flatMap(({ activity }) =>
      activityOf(at, activity).window === window
        ? [sayOption('fixed-no-more', { activity, window })]
        : [],
    ),
  ];
}

/**
 * A way that a person made up in words: a longer window, more of a resource, work left out, or several of them. Its cut-off is
 * not part of the draft: it is a rule for the shift.
 */
export function wishedOption(
  at: Situation,
  name: string,
  wish: OptionWish,
  place: number,
): Draft | RefusedOption {
  const id = `own ${place + 1}`;
  const fault = faultOf(at, wish);
  if (fault !== undefined) return refused(id, 'own', name, 'infeasible', fault);
  const draft = ownOption(at, name, documentOf(at, wish), place);
  if ('state' in draft) return draft;
  const priced = at.plan.resources.find((resource) => resource.id === wish.extra?.resource);
  const { turn: _, ...rest } = draft;
  const made: Draft = {
    ...rest,
    changes: changesOf(at, wish),
    notes: [
      ...(wish.longerMinutes !== undefined && draft.lines.length === 0
        ? [sayOption('no-price-for-longer')]
        : []),
      ...(wish.longerMinutes === undefined ? [] : [sayOption('trains-rebooked')]),
      ...(priced && priced.ratePerHour === undefined
        ? [sayOption('more-no-rate', { resource: priced.id })]
        : []),
    ],
  };
  return wish.leaveOut && wish.leaveOut.length > 0 ? leaveOut(at, made, wish) : made;
}

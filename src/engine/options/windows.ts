import {
  addMinutes,
  DAY,
  dayAt,
  dayText,
  durationText,
  instantOf,
  lengthMinutes,
  localTimeOf,
  MINUTE,
  type Instant,
} from '../../calendar/index.js';
import type { Placement } from '../../fit/types.js';
import { unitsLeft, type Activity, type PlanDocument, type Resource } from '../../model/index.js';
import { bookingCost, callOuts, parseMoney } from '../../price/index.js';
import { verify } from '../../schedule/index.js';
import { sitePlan } from '../site/site-plan.js';
import type { Draft, Situation } from './draft.js';
import { cellOf, withCells, withRow, withTrainsAgain } from './edits.js';
import { clearAt, planFurther, refit, unitsIn } from './plans.js';
import type { OptionKind, RefusedOption } from './types.js';

// The options that change the window or what there is to work with: more plant, more time, a second night.

const refused = (
  id: string,
  kind: OptionKind,
  name: string,
  state: RefusedOption['state'],
  reason: string,
): RefusedOption => ({ id, kind, name, state, reason });

const elsewhere = (at: Situation): readonly Placement[] =>
  at.planned.placements.filter((one) => one.window !== at.window.id);

/** As planned: what the others are held against. */
export function asPlanned(at: Situation): Draft {
  return {
    id: 'as-planned',
    kind: 'as-planned',
    name: 'As planned',
    changes: [],
    document: at.document,
    plan: at.plan,
    trains: at.trains,
    here: [at.planned],
    placements: at.planned.placements,
    unplaced: [],
    keyDates: [],
    lines: [],
    notes: [],
  };
}

/** The same work in the order that clears the line soonest: so that more plant is not praised for a better order. */
export function anotherOrder(at: Situation): Draft | RefusedOption {
  const { window, planned } = at;
  const others = elsewhere(at);
  const tight = refit(at.plan, window, unitsIn(window.id, planned.placements), others, at.time);
  const gained = clearAt(window, planned.placements) - clearAt(window, tight.placements);
  const named = { id: 'order', kind: 'another-order', name: 'Another order' } as const;
  if (tight.unplaced.length > 0 || gained <= 0)
    return {
      ...named,
      state: 'nothing-to-vary',
      reason: 'No other order of the work was found that clears the line sooner.',
    };
  const placements = [...others, ...tight.placements];
  return {
    ...asPlanned(at),
    ...named,
    changes: [`The same work in another order is clear ${durationText(gained / MINUTE)} sooner.`],
    here: [{ ...planned, placements }],
    placements,
    turn: { what: 'The change of order', minor: 0 },
  };
}

/** One more of each limited resource of the window, for the days of the window. */
export function extraResources(at: Situation): (Draft | RefusedOption)[] {
  const { window, plan, planned } = at;
  const used = new Set(
    planned.placements
      .filter((one) => one.window === window.id)
      .flatMap((one) => activityOf(at, one.activity).resources.map((need) => need.resource)),
  );
  const limited = plan.resources.filter((one) => used.has(one.id));
  if (limited.length === 0)
    return [
      refused(
        'extra',
        'extra-resource',
        'Extra plant or gang',
        'nothing-to-vary',
        'No work of this window uses plant or labour of which there is only so much.',
      ),
    ];
  const units = unitsIn(window.id, planned.placements);
  const others = elsewhere(at);
  const tight = refit(plan, window, units, others, at.time);
  return limited.map((given): Draft | RefusedOption => {
    const resource = given.id;
    const [id, name] = [`extra ${resource}`, `One more ${resource}`];
    const none = refused(
      id,
      'extra-resource',
      name,
      'nothing-to-vary',
      `Another ${resource} would clear the line no sooner: no work of ${window.id} waits for one.`,
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
        .filter((one) => one.resource === resource)
        .reduce((sum, one) => sum + parseMoney(one.amount, at.prices), 0);
    const work = { ...next, window, placements };
    return {
      id,
      kind: 'extra-resource',
      name,
      changes: [
        `One more ${resource} on the days of ${window.id}; the work is clear ${durationText(gained / MINUTE)} sooner than in its best order without.`,
      ],
      document,
      ...next,
      here: [work],
      placements,
      unplaced: [],
      keyDates: [],
      lines: [],
      turn: { what: `What ${resource} costs more`, minor: paid(work) - paid(planned) },
      notes: [
        given.ratePerHour === undefined
          ? `${resource} has no rate an hour: one more is not in the total.`
          : 'One more is paid from its first use to its last, for its least hours at least.',
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

/** The same work in a window that ends later. */
export function longerWindow(at: Situation): Draft {
  const { window, request, prices, holidays } = at;
  const minutes = request.longerMinutes ?? 60;
  const end = addMinutes(window.end, minutes);
  const document = withCells(at.document, 'windows', 'window', window.id, {
    end: cellOf(end, window.zone),
  });
  const next = sitePlan(document);
  const longer = next.plan.windows.find((one) => one.id === window.id)!;
  const { placements } = at.planned;
  const booked = bookingCost({
    window,
    minutes,
    windows: 0,
    prices,
    holidays,
    ...(request.askedAt !== undefined && { askedAt: request.askedAt }),
  });
  const crossed = next.plan.windows.filter(
    (one) => one.id !== window.id && one.start < end && one.end > window.end,
  );
  return {
    id: 'longer',
    kind: 'longer-window',
    name: `${durationText(minutes)} longer`,
    changes: [`${window.id} is booked to ${cellOf(end, window.zone)}; the work stays as planned.`],
    document,
    ...next,
    here: [{ ...next, window: longer, placements }],
    placements,
    unplaced: [],
    keyDates: [],
    lines: booked ? [{ part: 'booking', ...booked }] : [],
    turn: {
      what: `The further ${durationText(minutes)}`,
      minor: booked ? parseMoney(booked.amount, prices) : 0,
      each: { count: minutes / 60, word: 'an hour' },
    },
    notes: [
      ...(booked
        ? []
        : ['The price book has no price of booking: the longer window is priced at nothing.']),
      ...crossed.map((one) => `${one.id} begins before the longer window ends.`),
      'Trains due before the new end are taken as rebooked with it, and cost nothing here.',
    ],
  };
}

/** The second half of the window's work in a like window some days later. */
export function splitWindow(at: Situation): Draft | RefusedOption {
  const { window, request, prices, holidays } = at;
  const days = request.splitDaysLater ?? 7;
  const id = freeId(at, `${window.id} second`);
  const name = 'Over two windows';
  const no = (state: RefusedOption['state'], reason: string): RefusedOption =>
    refused('split', 'split', name, state, reason);
  const start = daysLater(window.start, days, window.zone);
  const end = addMinutes(start, lengthMinutes(window));
  const cut = halves(at);
  if (cut.later.size === 0)
    return no('nothing-to-vary', 'The window holds one piece of work, which cannot be divided.');
  const shiftMs = start - window.start;
  const opened = withRow(
    at.document,
    'windows',
    {
      window: id,
      title: `${window.title}, second half`.replace(/^, /, ''),
      start: cellOf(start, window.zone),
      end: cellOf(end, window.zone),
      isolation: window.isolation.map((one) => one.section).join(';'),
      status: 'requested',
    },
    { key: 'window', id: window.id },
  );
  // A choice of the first window by the planner goes along with the work.
  const moved = [...cut.later.keys()].filter(
    (one) => cut.wholly(one) && activityOf(at, one).window === window.id,
  );
  const chosen = moved.reduce(
    (made, one) => withCells(made, 'work', 'activity', one, { window: id }),
    opened,
  );
  const divided = [...cut.later.keys()].filter(
    (one) => !cut.wholly(one) && activityOf(at, one).window === window.id,
  );
  const unbound = divided.reduce(
    (made, one) => withCells(made, 'work', 'activity', one, { window: '' }),
    chosen,
  );
  const document = withTrainsAgain(unbound, at.trains, window, { id, shiftMs });
  const next = sitePlan(document);
  const second = next.plan.windows.find((one) => one.id === id);
  if (!second) return no('infeasible', 'A second window cannot be written beside the first.');
  const kept = [
    ...elsewhere(at),
    ...at.planned.placements.flatMap((one) => (one.window === window.id ? cut.first(one) : [])),
  ];
  const there = refit(next.plan, second, cut.later, kept, at.time);
  if (there.unplaced.length > 0) return no('infeasible', reasonOf(there.unplaced));
  const found = settle(at, next.plan, [...kept, ...there.placements]);
  if (found.unplaced.length > 0) return no('infeasible', reasonOf(found.unplaced));
  const { placements } = found;
  const booked = bookingCost({
    window: second,
    minutes: lengthMinutes(second),
    windows: 1,
    prices,
    holidays,
    ...(request.askedAt !== undefined && { askedAt: request.askedAt }),
  });
  return {
    id: 'split',
    kind: 'split',
    name,
    changes: [
      `A window like ${window.id} is booked for ${cellOf(start, window.zone)}, and the second half of the work goes there.`,
    ],
    document,
    ...next,
    here: [
      { ...next, window, placements },
      {
        ...next,
        window: second,
        placements,
        night: id,
        unitsBefore: unitsIn(window.id, placements),
      },
    ],
    ...found,
    lines: booked ? [{ part: 'booking', ...booked }] : [],
    turn: { what: 'The second window', minor: booked ? parseMoney(booked.amount, prices) : 0 },
    notes: booked
      ? []
      : ['The price book has no price of booking: the second window is priced at nothing.'],
  };
}

/** A way that a person made up: a change of the document. */
export function ownOption(
  at: Situation,
  name: string,
  document: PlanDocument,
  place: number,
): Draft | RefusedOption {
  const id = `own ${place + 1}`;
  const { window, prices, holidays, request } = at;
  const next = sitePlan(document);
  const fault = next.faults.find((one) => one.severity === 'error');
  if (fault) return refused(id, 'own', name, 'infeasible', `${fault.message} ${fault.mend}`);
  const then = next.plan.windows.find((one) => one.id === window.id);
  if (!then || then.status === 'withdrawn')
    return refused(id, 'own', name, 'infeasible', `${window.id} is not there any more.`);
  const planned = planOf(at, next.plan, then);
  if ('reason' in planned) return refused(id, 'own', name, 'infeasible', planned.reason);
  const more = lengthMinutes(then) - lengthMinutes(window);
  const booked =
    more > 0
      ? bookingCost({
          window,
          minutes: more,
          windows: 0,
          prices,
          holidays,
          ...(request.askedAt !== undefined && { askedAt: request.askedAt }),
        })
      : null;
  return {
    id,
    kind: 'own',
    name,
    changes: [`As you changed the plan: ${name}.`],
    document,
    ...next,
    here: [{ ...next, window: then, placements: planned.placements }],
    ...planned,
    lines: booked ? [{ part: 'booking', ...booked }] : [],
    turn: {
      what: 'Making the change',
      minor: booked ? parseMoney(booked.amount, prices) : 0,
    },
    notes: ['What making the change itself costs is not known here, and not in the total.'],
  };
}

/** The plan of a changed document: as it was where that still holds and is no slower, otherwise planned anew. */
function planOf(
  at: Situation,
  plan: Situation['plan'],
  window: Situation['window'],
): Pick<Draft, 'placements' | 'unplaced' | 'keyDates'> | { readonly reason: string } {
  const units = unitsIn(window.id, at.planned.placements);
  const others = elsewhere(at);
  const before = refit(at.plan, at.window, units, others, at.time);
  const after = refit(plan, window, units, others, at.time);
  if (after.unplaced.length > 0)
    return {
      reason: `Not all of the work planned in ${window.id} fits any more. ${reasonOf(after.unplaced)}`,
    };
  const gained = clearAt(at.window, before.placements) - clearAt(window, after.placements);
  const same = gained === 0 && before.unplaced.length === 0;
  return settle(at, plan, same ? at.planned.placements : [...others, ...after.placements]);
}

/** The placements with what no longer keeps to the plan after the window moved where it does. */
function settle(
  at: Situation,
  plan: Situation['plan'],
  placements: readonly Placement[],
): Pick<Draft, 'placements' | 'unplaced' | 'keyDates'> {
  const known = new Set(
    verify(at.plan, at.planned.placements).map((fault) => JSON.stringify(fault)),
  );
  const broken = verify(plan, placements).filter((fault) => !known.has(JSON.stringify(fault)));
  if (broken.length === 0) return { placements, unplaced: [], keyDates: [] };
  const free = new Set(broken.map((fault) => fault.activity));
  return planFurther(
    plan,
    at.window.end,
    placements.filter((one) => !free.has(one.activity) || one.from < at.window.end),
    free,
    at.request.allocation,
    at.time,
  );
}

interface Halves {
  /** Units of each activity that go to the second window; 1 for a whole piece of work. */
  readonly later: ReadonlyMap<string, number>;
  /** Whether nothing of an activity stays in the first, nor is done elsewhere. */
  readonly wholly: (activity: string) => boolean;
  /** What of a visit stays in the first. */
  readonly first: (visit: Placement) => readonly Placement[];
}

/** The window's work divided where half of its minutes are done; repeated work between two units. */
function halves(at: Situation): Halves {
  const visits = at.planned.placements
    .filter((one) => one.window === at.window.id)
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const all = visits.reduce((total, one) => total + (one.to - one.from), 0);
  let passed = 0;
  let moment = Infinity;
  for (const one of visits) {
    if (passed + (one.to - one.from) >= all / 2) {
      moment = one.from + (all / 2 - passed);
      break;
    }
    passed += one.to - one.from;
  }
  const later = new Map<string, number>();
  const kept = new Map<Placement, readonly Placement[]>();
  for (const visit of visits) {
    const stays = firstPart(visit, activityOf(at, visit.activity), moment, visits[0] === visit);
    kept.set(visit, stays);
    const goes = (visit.units ?? 1) - (stays.length === 0 ? 0 : (stays[0]!.units ?? 1));
    if (goes > 0) later.set(visit.activity, (later.get(visit.activity) ?? 0) + goes);
  }
  return {
    later,
    wholly: (id) => unitsLeft(activityOf(at, id).work) === later.get(id),
    first: (visit) => kept.get(visit) ?? [],
  };
}

function firstPart(
  visit: Placement,
  { work }: Activity,
  moment: Instant,
  isFirst: boolean,
): readonly Placement[] {
  if (work.kind === 'whole' || visit.units === undefined)
    return visit.from < moment || isFirst ? [visit] : [];
  const time = (moment - visit.from) / MINUTE - work.setUpMinutes;
  const units = Math.min(visit.units, Math.max(0, Math.floor(time / work.minutesPerUnit)));
  if (units === 0) return [];
  const minutes = work.setUpMinutes + units * work.minutesPerUnit + work.makeSafeMinutes;
  return [{ ...visit, units, to: visit.from + minutes * MINUTE }];
}

/** The same wall clock some days later; of two readings the earlier. */
function daysLater(at: Instant, days: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  const { year, month, day } = localTimeOf(at + days * DAY, zone);
  return instantOf({ year, month, day, hour, minute }, zone, 'earlier');
}

function freeId(at: Situation, wanted: string): string {
  const taken = new Set(at.plan.windows.map((one) => one.id));
  let id = wanted;
  for (let n = 2; taken.has(id); n += 1) id = `${wanted} ${n}`;
  return id;
}

export function activityOf(at: Situation, id: string): Activity {
  const found = at.plan.activities.find((one) => one.id === id);
  if (!found) throw new RangeError(`a placement names activity ${id}: not in the plan`);
  return found;
}

export function reasonOf(unplaced: Draft['unplaced']): string {
  return unplaced
    .map(
      (one) => `${one.activity} finds no place: ${one.reasons.map((each) => each.text).join(' ')}`,
    )
    .join(' ');
}

import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Placement, Told } from '../../model/index.js';
import { say, word } from '../report/say.js';
import type { LookAheadBasis } from './basis.js';

/** Something that stands in the way of the work of the weeks to come. */
export interface NotReady {
  /** kebab-case, stable. */
  readonly code: string;
  /** Window or activity that it is about. */
  readonly about: string;
  readonly text: Told;
}

interface Stretch {
  readonly windows: readonly {
    readonly window: AccessWindow;
    readonly work: readonly Placement[];
  }[];
  readonly placed: readonly Placement[];
  readonly from: Instant;
  readonly until: Instant;
}

/**
 * What is known to be missing for the work of a stretch of time. That nothing is listed says only that nothing is known
 * of: what no table tells (permits, possessions as issued, deliveries) is not looked at.
 */
export function notReady(basis: LookAheadBasis, stretch: Stretch): readonly NotReady[] {
  return [
    ...ofWindows(basis, stretch),
    ...ofWork(basis, stretch),
    ...ofPlant(basis, stretch),
    ...ofKeyDates(basis, stretch),
  ];
}

function ofWindows({ milestones, unmanned }: LookAheadBasis, { windows }: Stretch): NotReady[] {
  return windows.flatMap(({ window, work }) => {
    const { id } = window;
    const late = milestones.filter(
      (milestone) => milestone.window === id && milestone.state === 'late',
    );
    const alone = unmanned?.get(id) ?? 0;
    return [
      ...(window.status === 'confirmed' || work.length === 0
        ? []
        : [
            {
              code: 'not-confirmed',
              about: id,
              text: say('only-of-status', { window: id, why: word(window.status) }),
            },
          ]),
      ...late.slice(0, 1).map((milestone) => ({
        code: 'booking-late',
        about: id,
        text: say('booking-was-due', {
          window: id,
          milestone: milestone.milestone,
          due: { at: milestone.due, zone: milestone.zone },
          more: late.length - 1,
        }),
      })),
      ...(alone === 0 || work.length === 0
        ? []
        : [
            {
              code: 'not-manned',
              about: id,
              text: say('nobody-rostered', { window: id, minutes: alone }),
            },
          ]),
    ];
  });
}

/** Pieces that no longer hold, are unsaid to be fit to run after, or have a limit that nobody may lift in time. */
function ofWork(
  { broken, allocation, plan }: LookAheadBasis,
  { placed, windows }: Stretch,
): NotReady[] {
  const here = new Set(placed.map((placement) => placement.activity));
  const open = new Set(windows.map(({ window }) => window.id));
  const titles = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return [
    ...broken.map((item) => ({ code: 'plan-broken', about: item.activity, text: item })),
    ...allocation.unstated
      .filter(
        (unstated) =>
          here.has(unstated.activity) || unstated.windows.some((window) => open.has(window)),
      )
      .map((unstated) => ({ code: 'not-said', about: unstated.activity, text: unstated })),
    ...placed.flatMap(({ activity, from }) =>
      (titles.get(activity)?.after ?? []).flatMap((link) =>
        allocation.unplaced.some((item) => item.activity === link.activity)
          ? [
              {
                code: 'waits-for-unplaced',
                about: activity,
                text: say('waits-for-unplaced', {
                  activity,
                  start: { at: from, zone: plan.zone },
                  other: link.activity,
                }),
              },
            ]
          : [],
      ),
    ),
  ];
}

function ofPlant({ plan }: LookAheadBasis, { placed }: Stretch): NotReady[] {
  const here = new Set(placed.map((placement) => placement.activity));
  const listed = new Set(plan.resources.map((resource) => resource.id));
  const wanted = plan.activities
    .filter((activity) => here.has(activity.id))
    .flatMap((activity) => activity.resources.map(({ resource }) => resource));
  return [...new Set(wanted)]
    .filter((resource) => !listed.has(resource))
    .map((resource) => ({
      code: 'not-listed',
      about: resource,
      text: say('not-in-resources', { resource }),
    }));
}

function ofKeyDates({ plan, allocation }: LookAheadBasis, { from, until }: Stretch): NotReady[] {
  return allocation.keyDates
    .filter((date) => !date.met && date.due >= from && date.due < until)
    .map((date) => ({
      code: 'key-date-missed',
      about: date.package,
      text: say('misses-key-date', {
        package: date.package,
        due: { at: date.due, zone: plan.zone },
        forecast: date.forecast === null ? null : { at: date.forecast, zone: plan.zone },
      }),
    }));
}

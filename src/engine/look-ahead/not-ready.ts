import { clockWords, dueWords, durationText, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Placement } from '../../model/index.js';
import type { LookAheadBasis } from './basis.js';

/** Something that stands in the way of the work of the weeks to come. */
export interface NotReady {
  /** kebab-case, stable. */
  readonly code: string;
  /** Window or activity that it is about. */
  readonly about: string;
  readonly text: string;
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
    const late = milestones.filter((one) => one.window === id && one.state === 'late');
    const alone = unmanned?.get(id) ?? 0;
    return [
      ...(window.status === 'confirmed' || work.length === 0
        ? []
        : [
            {
              code: 'not-confirmed',
              about: id,
              text: `${id} has work and is only ${window.status}`,
            },
          ]),
      ...late.slice(0, 1).map((one) => ({
        code: 'booking-late',
        about: id,
        text: `${id}: "${one.milestone}" was due ${clockWords(one.due, one.zone)} and is not recorded as met${late.length > 1 ? `, and ${late.length - 1} more` : ''}`,
      })),
      ...(alone === 0 || work.length === 0
        ? []
        : [
            {
              code: 'not-manned',
              about: id,
              text: `${id}: nobody is rostered for ${durationText(alone)} of it`,
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
  const here = new Set(placed.map((one) => one.activity));
  const open = new Set(windows.map(({ window }) => window.id));
  const titles = new Map(plan.activities.map((one) => [one.id, one]));
  return [
    ...broken.map(({ activity, text }) => ({ code: 'plan-broken', about: activity, text })),
    ...allocation.unstated
      .filter((one) => here.has(one.activity) || one.windows.some((window) => open.has(window)))
      .map((one) => ({ code: 'not-said', about: one.activity, text: one.text })),
    ...placed.flatMap(({ activity, from }) =>
      (titles.get(activity)?.after ?? []).flatMap((link) =>
        allocation.unplaced.some((one) => one.activity === link.activity)
          ? [
              {
                code: 'waits-for-unplaced',
                about: activity,
                text: `${activity} (${clockWords(from, plan.zone)}) waits for ${link.activity}, which is not placed in full`,
              },
            ]
          : [],
      ),
    ),
  ];
}

function ofPlant({ plan }: LookAheadBasis, { placed }: Stretch): NotReady[] {
  const here = new Set(placed.map((one) => one.activity));
  const listed = new Set(plan.resources.map((one) => one.id));
  const wanted = plan.activities
    .filter((one) => here.has(one.id))
    .flatMap((one) => one.resources.map(({ resource }) => resource));
  return [...new Set(wanted)]
    .filter((one) => !listed.has(one))
    .map((one) => ({
      code: 'not-listed',
      about: one,
      text: `${one} is wanted and is in no table of resources: how many there are is not known`,
    }));
}

function ofKeyDates({ plan, allocation }: LookAheadBasis, { from, until }: Stretch): NotReady[] {
  return allocation.keyDates
    .filter((one) => !one.met && one.due >= from && one.due < until)
    .map((one) => ({
      code: 'key-date-missed',
      about: one.package,
      text: `${one.package} misses its key date of ${dueWords(one.due, plan.zone)}: ${one.forecast === null ? 'not all of it is placed' : `forecast ${clockWords(one.forecast, plan.zone)}`}`,
    }));
}

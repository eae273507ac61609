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
              text: `${id} has work and is only ${window.status}`,
            },
          ]),
      ...late.slice(0, 1).map((milestone) => ({
        code: 'booking-late',
        about: id,
        text: `${id}: "${milestone.milestone}" was due ${clockWords(milestone.due, milestone.zone)} and is not recorded as met${late.length > 1 ? `, and ${late.length - 1} more` : ''}`,
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
  const here = new Set(placed.map((placement) => placement.activity));
  const open = new Set(windows.map(({ window }) => window.id));
  const titles = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return [
    ...broken.map(({ activity, text }) => ({ code: 'plan-broken', about: activity, text })),
    ...allocation.unstated
      .filter(
        (unstated) =>
          here.has(unstated.activity) || unstated.windows.some((window) => open.has(window)),
      )
      .map((unstated) => ({ code: 'not-said', about: unstated.activity, text: unstated.text })),
    ...placed.flatMap(({ activity, from }) =>
      (titles.get(activity)?.after ?? []).flatMap((link) =>
        allocation.unplaced.some((item) => item.activity === link.activity)
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
  const here = new Set(placed.map((placement) => placement.activity));
  const listed = new Set(plan.resources.map((resource) => resource.id));
  const wanted = plan.activities
    .filter((activity) => here.has(activity.id))
    .flatMap((activity) => activity.resources.map(({ resource }) => resource));
  return [...new Set(wanted)]
    .filter((text) => !listed.has(text))
    .map((text) => ({
      code: 'not-listed',
      about: text,
      text: `${text} is wanted and is in no table of resources: how many there are is not known`,
    }));
}

function ofKeyDates({ plan, allocation }: LookAheadBasis, { from, until }: Stretch): NotReady[] {
  return allocation.keyDates
    .filter((date) => !date.met && date.due >= from && date.due < until)
    .map((date) => ({
      code: 'key-date-missed',
      about: date.package,
      text: `${date.package} misses its key date of ${dueWords(date.due, plan.zone)}: ${date.forecast === null ? 'not all of it is placed' : `forecast ${clockWords(date.forecast, plan.zone)}`}`,
    }));
}

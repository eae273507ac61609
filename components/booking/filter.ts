import type { Milestone } from '../../src/engine/index.js';

/** Which milestones are listed. */
export type BookingFilter = 'open' | 'late' | 'soon' | 'all';

const FOUR_WEEKS = 4 * 7 * 1440;

export const passes: Readonly<Record<BookingFilter, (milestone: Milestone) => boolean>> = {
  open: (milestone) => milestone.state !== 'met' && milestone.state !== 'not needed',
  late: (milestone) => milestone.state === 'late',
  soon: (milestone) => milestone.state === 'due' && milestone.minutesLeft <= FOUR_WEEKS,
  all: () => true,
};

/** Who has something to do, in the order of the alphabet; a date that names nobody is of none of them. */
export function whoIn(milestones: readonly Milestone[]): readonly string[] {
  return [...new Set(milestones.flatMap((milestone) => milestone.by ?? []))].sort();
}

/** What the filter and the one who is asked about leave, the earliest due first. */
export function listed(
  milestones: readonly Milestone[],
  filter: BookingFilter,
  who: string,
): readonly Milestone[] {
  return milestones
    .filter((milestone) => passes[filter](milestone) && (who === '' || milestone.by === who))
    .sort((a, b) => a.due - b.due);
}

import { isoText } from '../../calendar/index.js';
import { cautions } from '../../model/index.js';
import type { Milestone } from './milestones.js';

/** A milestone as a calendar event; input of the calendar file. */
export interface MilestoneEvent {
  readonly uid: string;
  readonly start: number;
  readonly summary: string;
  readonly description: string;
  readonly sequence: number;
  readonly cancelled: boolean;
}

/**
 * Calendar events for milestones. Milestones already met are left out; those of a withdrawn window are cancelled, so a
 * calendar that has them removes them.
 *
 * The uid depends only on plan, window and milestone, so a later file moves an event and does not duplicate it.
 * `sequence`: the caller's count of files sent.
 */
export function milestoneEvents(
  milestones: readonly Milestone[],
  plan: string,
  sequence = 0,
): readonly MilestoneEvent[] {
  return milestones
    .filter((milestone) => milestone.state !== 'met')
    .map((milestone) => ({
      uid: `${[plan, milestone.window, milestone.milestone].map(encoded).join('/')}@possession-fit`,
      start: milestone.due,
      summary: `${milestone.window}: ${milestone.milestone}`,
      description: [
        `Due ${isoText(milestone.due, milestone.zone)} (${milestone.zone}).`,
        ...(milestone.by === undefined ? [] : [`By: ${milestone.by}.`]),
        `State when written: ${milestone.state}.`,
        ...(milestone.inTwo ? [inTwoText(milestone)] : []),
        `Source: ${milestone.source} (${milestone.sureness}).`,
        ...cautions,
      ].join('\n'),
      sequence,
      cancelled: milestone.state === 'not needed',
    }));
}

/** That a window lies in two weeks, periods or timetables, in English. */
export const inTwoText = ({ before }: Milestone): string =>
  `The window lies in two of them: counted from the first ${before}.`;

/** A lone surrogate, left by a truncated paste, cannot be encoded. */
function encoded(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD'));
}

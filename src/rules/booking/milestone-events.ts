import { isoText } from '../../calendar/index.js';
import { cautions } from '../../model/index.js';
import type { Milestone } from './milestones.js';

/** A milestone as an entry of a diary; the shape the calendar file is written from. */
export interface MilestoneEvent {
  readonly uid: string;
  readonly start: number;
  readonly summary: string;
  readonly description: string;
  readonly sequence: number;
  readonly cancelled: boolean;
}

/**
 * Diary entries for milestones. Milestones already met are left out; those of a withdrawn window are cancelled, so
 * that a diary that holds them strikes them out.
 *
 * The uid hangs on plan, window and milestone alone, so a later file moves an entry and does not double it.
 * `sequence` is the caller's count of files sent.
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
        ...(milestone.note === undefined ? [] : [milestone.note]),
        `Source: ${milestone.source} (${milestone.sureness}).`,
        ...cautions,
      ].join('\n'),
      sequence,
      cancelled: milestone.state === 'not needed',
    }));
}

/** Half a character, which a cut paste leaves, cannot be encoded. */
function encoded(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD'));
}

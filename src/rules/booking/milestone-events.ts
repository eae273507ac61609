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
    .filter((one) => one.state !== 'met')
    .map((one) => ({
      uid: `${[plan, one.window, one.milestone].map(encoded).join('/')}@possession-fit`,
      start: one.due,
      summary: `${one.window}: ${one.milestone}`,
      description: [
        `Due ${isoText(one.due, one.zone)} (${one.zone}).`,
        ...(one.by === undefined ? [] : [`By: ${one.by}.`]),
        `State when written: ${one.state}.`,
        ...(one.note === undefined ? [] : [one.note]),
        `Source: ${one.source} (${one.sureness}).`,
        ...cautions,
      ].join('\n'),
      sequence,
      cancelled: one.state === 'not needed',
    }));
}

/** Half a character, which a cut paste leaves, cannot be encoded. */
function encoded(text: string): string {
  return encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\uFFFD'));
}

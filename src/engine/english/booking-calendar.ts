import { isoText } from '../../calendar/index.js';
import type { Moment, SayPhrase, Sourced, Told } from '../../model/index.js';
import { inTwoText, type Milestone } from '../../rules/booking/index.js';

/** English for what a calendar of booking dates says. */
export const bookingCalendarSentences = {
  'booking-about': (
    { document, plan }: { readonly document: string; readonly plan: Told | null },
    say: SayPhrase,
  ) => `Document: ${document}. Plan of work: ${plan === null ? 'none is agreed' : say(plan)}.`,
  'booking-due': ({ due }: { readonly due: Moment }) =>
    `Due ${isoText(due.at, due.zone)} (${due.zone}).`,
  'booking-by': ({ by }: { readonly by: string }) => `By: ${by}.`,
  'booking-state': ({ state }: Pick<Milestone, 'state'>) => `State when written: ${state}.`,
  'booking-in-two': ({ anchor }: { readonly anchor: Milestone['before'] }) =>
    inTwoText({ before: anchor }),
  'booking-source': ({ source, sureness }: Sourced) => `Source: ${source} (${sureness}).`,
};

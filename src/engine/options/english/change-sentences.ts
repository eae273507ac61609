// English for what ways to do the work are called, what they change, and what to know of them.
import { clockWords, dueWords } from '../../../calendar/clock-words.js';
import { durationText, isoText } from '../../../calendar/index.js';
import type { Moment, Phrase, SayPhrase } from '../../../model/index.js';

type OfWindow = { readonly window: string };
type OfActivity = { readonly activity: string };
type OfResource = { readonly resource: string };
type OfMinutes = { readonly minutes: number };
type OfMoment = { readonly moment: Moment };
type Booked = OfWindow & { readonly end: Moment };
type Fewer = OfActivity & OfWindow & { readonly units: number };
type DateTurn = OfMoment & {
  readonly package: string;
  /** It is met as planned and missed so; else the other way round. */
  readonly missed: boolean;
  readonly sometimes: boolean;
};
type More = OfResource & OfWindow & { readonly count: number };

const words = ({ at, zone }: Moment): string => clockWords(at, zone);

/** `02:40`: by the clocks of the night, which need no day. */
export const clock = ({ at, zone }: Moment): string => isoText(at, zone).slice(11, 16);

export const changeSentences = {
  'as-planned': () => 'As planned',
  'one-unit-less': () => 'One unit less',
  'earlier-cut-off': () => 'Earlier cut-off',
  'cut-off-at': ({ moment }: OfMoment) => `Cut-off at ${clock(moment)}`,
  'another-order': () => 'Another order',
  'extra-plant-or-gang': () => 'Extra plant or gang',
  'one-more-of': ({ resource }: OfResource) => `One more ${resource}`,
  'longer-by': ({ minutes }: OfMinutes) => `${durationText(minutes)} longer`,
  'over-two-windows': () => 'Over two windows',

  'unit-less-in': ({ activity, window }: OfActivity & OfWindow) =>
    `One unit of ${activity} less in ${window}.`,
  'units-less-in': ({ units, activity, window }: Fewer) =>
    `${units} of ${activity} less in ${window}.`,
  'left-out-of': ({ activity, window, minutes }: OfActivity & OfWindow & OfMinutes) =>
    `${activity} is left out of ${window} (${durationText(minutes)}).`,
  'fixed-no-more': ({ activity, window }: OfActivity & OfWindow) =>
    `${activity} is not fixed to ${window} any more.`,
  'order-clear-sooner': ({ minutes }: OfMinutes) =>
    `The same work in another order is clear ${durationText(minutes)} sooner.`,
  'no-unit-begins-after': ({ activity, moment }: OfActivity & OfMoment) =>
    `No unit of ${activity} begins after ${clock(moment)}; what is then left goes to the windows that follow.`,
  'one-more-on-days': ({ resource, window, minutes }: OfResource & OfWindow & OfMinutes) =>
    `One more ${resource} on the days of ${window}; the work is clear ${durationText(minutes)} sooner than in its best order without.`,
  'more-on-days': ({ count, resource, window }: More) =>
    `${count} more ${resource} on the days of ${window}.`,
  'booked-as-planned': ({ window, end }: Booked) =>
    `${window} is booked to ${words(end)}; the work stays as planned.`,
  'booked-to': ({ window, end }: Booked) => `${window} is booked to ${words(end)}.`,
  'like-window-booked': ({ window, moment }: OfWindow & OfMoment) =>
    `A window like ${window} is booked for ${words(moment)}, and the second half of the work goes there.`,
  'as-you-changed': ({ name }: { readonly name: string }) => `As you changed the plan: ${name}.`,

  'one-unit-always': () => 'At least one unit is done in every run.',
  'no-price-for-left-over': () =>
    'The price book has no price for work left over: only its plant and labour are counted.',
  'windows-added': ({ windows }: { readonly windows: readonly string[] }) =>
    `${windows.join(', ')} ${windows.length === 1 ? 'holds' : 'hold'} no work as planned: what booking ${windows.length === 1 ? 'it' : 'them'} costs is not in the total.`,
  'key-date-turns': ({ package: name, moment, missed, sometimes }: DateTurn) =>
    `Key date of ${name}, ${dueWords(moment.at, moment.zone)}: ${missed ? 'met' : 'missed'} as planned, ${missed ? 'missed' : 'met'} ${sometimes ? 'in some simulated shifts' : 'this way'}.`,
  'one-more-no-rate': ({ resource }: OfResource) =>
    `${resource} has no rate an hour: one more is not in the total.`,
  'more-no-rate': ({ resource }: OfResource) =>
    `${resource} has no rate an hour: more of it is not in the total.`,
  'one-more-paid': () =>
    'One more is paid from its first use to its last, for its least hours at least.',
  'no-price-for-longer': () =>
    'The price book has no price of booking: the longer window is priced at nothing.',
  'no-price-for-second': () =>
    'The price book has no price of booking: the second window is priced at nothing.',
  'begins-before-longer-ends': ({ window }: OfWindow) =>
    `${window} begins before the longer window ends.`,
  'trains-rebooked': () =>
    'Trains due before the new end are taken as rebooked with it, and cost nothing here.',
  'change-not-priced': () =>
    'What making the change itself costs is not known here, and not in the total.',
  'check-found-fault': ({ what }: { readonly what: Phrase }, say: SayPhrase) =>
    `The check found a fault: do not use this plan. ${say(what)}.`,
  'key-date-not-in-total': (
    { title, formula }: { readonly title: Phrase; readonly formula: Phrase },
    say: SayPhrase,
  ) => `${say(title)}: ${say(formula)}, and not in the total.`,
  'draws-shared': () =>
    'What is drawn at random is drawn by piece of work, so that all options share it; the chances differ from those of Handback by their standard errors.',
  'damages-counted': () => 'Counted: delay damages, not the loss they stand for.',
};

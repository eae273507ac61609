// English for why a way to do the work is not to be had, or has nothing to vary.
import type { Phrase, SayPhrase } from '../../../model/index.js';

type OfWindow = { readonly window: string };
type OfActivity = { readonly activity: string };
type OfResource = { readonly resource: string };
type Names = readonly string[];

export const refusalSentences = {
  'finds-no-place': (
    { activity, reasons }: OfActivity & { readonly reasons: readonly Parameters<SayPhrase>[0][] },
    say: SayPhrase,
  ) => `${activity} finds no place: ${reasons.map(say).join('; ')}.`,
  'no-order-sooner': () => 'No other order of the work was found that clears the line sooner.',
  'nothing-limited': () =>
    'No work of this window uses plant or labour of which there is only so much.',
  'another-no-sooner': ({ resource, window }: OfResource & OfWindow) =>
    `Another ${resource} would clear the line no sooner: no work of ${window} waits for one.`,
  'one-piece-only': () => 'The window holds one piece of work, which cannot be divided.',
  'second-not-written': () => 'A second window cannot be written beside the first.',
  'no-units-to-stop-between': () =>
    'No repeated work is planned in this window, so there are no units to stop between.',
  'waits-for-all-units': ({ waits, activity }: OfActivity & { readonly waits: Names }) =>
    `${waits.join(', ')} in the same window must wait for all units of ${activity}: one less would leave ${waits.length === 1 ? 'it' : 'them'} undone too.`,
  'makes-good-here': ({ activity, opened }: OfActivity & { readonly opened: Names }) =>
    `${activity} makes ${opened.join(', ')} good: with one unit less the line would not be fit to run after this window.`,
  'one-unit-only': ({ activity }: OfActivity) =>
    `Only one unit of ${activity} is planned in this window.`,
  'no-cut-off-cheaper': () =>
    'No earlier cut-off after which all work has a place is cheaper than working to the booked end.',
  'same-in-every-shift': () =>
    'It changes nothing: the same cost in every simulated shift, and no work moves.',
  'wish-changes-nothing': () => 'It changes nothing.',
  'longer-by-whole-minutes': () => 'A window can be longer by whole minutes from 1.',
  'no-such-resource': ({ resource }: OfResource) => `There is no resource ${resource} in the plan.`,
  'more-by-whole-numbers': () => 'More of a resource is a whole number from 1.',
  'units-or-cut-off': () =>
    'A cut-off leaves out what is not begun by then: give either units to leave out or a cut-off.',
  'cut-off-not-in': ({ window }: OfWindow) => `The cut-off is not in ${window}.`,
  'no-work-of-it-in': ({ activity, window }: OfActivity & OfWindow) =>
    `No work of ${activity} is planned in ${window}.`,
  'may-leave-out': ({
    activity,
    most,
    window,
  }: OfActivity & OfWindow & { readonly most: number }) =>
    `Of ${activity}, 1 to ${most} can be left out of ${window}.`,
  'waits-for-left-out': ({ waits, window }: OfWindow & { readonly waits: Names }) =>
    `${waits.join(', ')} in ${window} must wait for what is left out: leave ${waits.length === 1 ? 'it' : 'them'} out too.`,
  'window-there-no-more': ({ window }: OfWindow) => `${window} is not there any more.`,
  'not-all-fits-any-more': ({ window, why }: OfWindow & { readonly why: Phrase }, say: SayPhrase) =>
    `Not all of the work planned in ${window} fits any more. ${say(why)}`,
  'not-planned-so': ({ activities }: { readonly activities: Names }) =>
    `${activities.join(', ')} could not be planned so.`,
  'makers-before-finish': ({ early, activity }: OfActivity & { readonly early: Names }) =>
    `${early.join(', ')} cannot be where ${activity} is not finished`,
  'left-not-made-good': ({
    activity,
    window,
    missing,
    before,
  }: OfActivity & {
    readonly window: string | null;
    readonly missing: Names;
    /** The activity was done before the plan begins. */
    readonly before: boolean;
  }) =>
    `${activity} ${before ? 'was done before and ' : ''}would not be made good in ${window}: ${missing.join(', ')} ${missing.length === 1 ? 'is' : 'are'} not finished there`,
};

// Why work finds no place in a plan, loaded with the search alone. Parameters: names as typed, minutes, counts.
import { durationText } from '../../calendar/index.js';
import { saysBy } from '../../model/index.js';
import { unmade, type Block } from '../reason-sentences.js';

type Names = readonly string[];
type Nothing = Readonly<Record<never, never>>;
/** How many windows of those with room were tried; absent: all. */
interface Tried {
  readonly some: number;
  readonly of: number;
}

const triedText = (tried: Tried | undefined): string =>
  tried ? ` (tried in the ${tried.some} windows of ${tried.of} with the most room)` : '';

export const unplacedSentences = {
  'stopped-too-soon': (_: Nothing) =>
    'the search was stopped too soon to find it a place or to say why it has none',
  'part-placed': ({ left, of }: { readonly left: number; readonly of: number }) =>
    `${left} of ${of} units find no place`,
  'no-room-before': (_: Nothing) =>
    'work that stays where it is waits for it, and there is no room before that',
  'waits-for-itself': ({ activity }: { readonly activity: string }) =>
    `${activity} waits for itself through its links`,
  'waits-for': ({ activity }: { readonly activity: string }) =>
    `waits for ${activity}, which is not all placed`,
  'no-usable-time': ({ activity }: { readonly activity: string }) =>
    `no window has usable time for ${activity}`,
  'waits-to-cure': ({ pour }: { readonly pour: string }) =>
    `waits for ${pour} to cure, and the temperatures given end before it has`,
  'longest-stretch': ({ needed, longest }: { readonly needed: number; readonly longest: number }) =>
    `needs ${durationText(needed)} in one go; the longest usable stretch is ${durationText(longest)}`,
  'later-end': ({ window, minutes }: { readonly window: string; readonly minutes: number }) =>
    `fits if the end of ${window} moves ${durationText(minutes)} later`,
  'no-room': (_: Nothing) => 'other work takes all the time that would do',
  'room-left': ({
    activities,
    window,
  }: {
    readonly activities: Names;
    /** Null: outside the windows. */
    readonly window: string | null;
  }) =>
    `there is room for ${activities.join(' and ')} ${window === null ? 'outside the windows' : `in ${window}`} as the plan stands, and the plan does not place ${activities.length > 1 ? 'them' : 'it'}`,
  'no-window': (_: Nothing) => 'the plan has no windows',
  'no-later-window': (_: Nothing) => 'no window of the plan begins later',
  'needs-of-resource': ({
    amount,
    resource,
    most,
  }: {
    readonly amount: number;
    readonly resource: string;
    readonly most: number;
  }) => `needs ${amount} of ${resource}; at most ${most} there when it could be used`,
  'no-time-long-enough': (_: Nothing) => 'no time left is long enough',
  'other-work-has-it': (_: Nothing) => 'other work has what it needs',
  'too-little-after': (_: Nothing) => 'what it waits for leaves it too little time after',
  'not-begin-sooner': (_: Nothing) => 'it may not begin sooner',
  'work-waits-for-it': (_: Nothing) => 'work that stays where it is waits for it',
  'place-alone': ({ place }: { readonly place: string }) =>
    `${place} is taken: work goes on there alone`,
  'not-enough-when-used': ({ resource }: { readonly resource: string }) =>
    `there is not enough of ${resource} when it could be used`,
  'block-not-asked': ({ asked, ...block }: Block & { readonly asked: number }) =>
    `${unmade(block)} in any window as it stands; how short was worked out for ${asked} other groups alone`,
  'block-in-no-window': (block: Block) => `${unmade(block)}: no window takes all of it`,
  'block-no-end': ({
    window,
    tried,
    ...block
  }: Block & { readonly window: string; readonly tried?: Tried }) =>
    `${unmade(block)} in ${window}: no later end of it was found to do${triedText(tried)}`,
  'block-short': ({
    window,
    minutes,
    tried,
    ...block
  }: Block & { readonly window: string; readonly minutes: number; readonly tried?: Tried }) =>
    `${unmade(block)} in ${window}: short by ${durationText(minutes)}${triedText(tried)}`,
  'kept-in-place': ({ window }: { readonly window: string | null }) =>
    `is kept ${window === null ? 'where it is' : `in ${window}`} and cannot stay`,
};

export const sayUnplaced = saysBy(unplacedSentences);

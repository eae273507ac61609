// What is said of a plan: how good it is known to be, and what nobody said of its work. Amounts: minutes, or windows for
// `fewest-windows`.
import { durationText } from '../calendar/index.js';
import { saysBy, type Worded } from '../model/index.js';

type Names = readonly string[];
type Nothing = Readonly<Record<never, never>>;
type Aim = 'key-dates' | 'margins' | 'finish' | 'fewest-windows';
interface Far {
  readonly aim: Aim;
  readonly far: number;
}

const aims: Readonly<Record<Aim, string>> = {
  'key-dates': 'key dates',
  margins: 'margins',
  finish: 'finish',
  'fewest-windows': 'count of windows',
};
const farText = ({ aim, far }: Far): string =>
  aim === 'fewest-windows' ? `${far} ${far === 1 ? 'window' : 'windows'}` : durationText(far);
const somePieces = (names: Names): string =>
  names.length > 6
    ? `${names.slice(0, 5).join(', ')} and ${names.length - 5} more`
    : names.join(', ');

export const planSentences = {
  'nothing-to-plan': (_: Nothing) => 'nothing to plan',
  'nothing-placed': (_: Nothing) => 'nothing is placed',
  'nothing-placed-stopped': (_: Nothing) => 'nothing is placed: the search was stopped too soon',
  'proven-best': (_: Nothing) => 'proven best',
  'more-might-go': (_: Nothing) => 'best found, not shown that no more can be placed',
  'found-from-best': (far: Far) => `best found, at most ${farText(far)} from best`,
  'first-proven': ({ first, ...far }: Far & { readonly first: Aim }) =>
    `${aims[first]} proven best; ${aims[far.aim]} best found, at most ${farText(far)} from best`,
  'given-broken': (_: Nothing) => 'as given; some of it no longer holds',
  'given-more-might-go': (_: Nothing) => 'as given, not shown that no more can be placed',
  'given-from-best': (far: Far) => `as given; ${aims[far.aim]} at most ${farText(far)} from best`,
  'given-proven': ({ known }: { readonly known: Worded }) => `as given; ${known.text}`,
  'search-cut-short': (_: Nothing) =>
    'The search was cut short: another machine, or this one at another time, may come to another plan',
  'left-open': ({
    packages,
  }: {
    readonly packages: readonly {
      readonly package: string;
      readonly begun: Names;
      readonly left: Names;
    }[];
  }) => {
    const each = packages.map(
      (item) =>
        `${somePieces(item.begun)} of ${item.package} is placed and ${somePieces(item.left)} is left over`,
    );
    return `Nothing says whether the line is fit to run where work stops: ${each.join('; ')}.`;
  },
  'goes-on-between': ({
    activity,
    windows,
  }: {
    readonly activity: string;
    readonly windows: Names;
  }) =>
    `${activity} goes on in ${windows.join(' and ')}: nothing says whether the line is fit to run in between`,
  'in-two-windows': ({
    activity,
    window,
    other,
    otherWindow,
  }: {
    readonly activity: string;
    readonly window: string;
    readonly other: string;
    readonly otherWindow: string;
  }) =>
    `${activity} is in ${window} and ${other} in ${otherWindow}: nothing says whether the line is fit to run in between`,
  'at-one-place': ({
    activity,
    other,
    windows,
    silent,
  }: {
    readonly activity: string;
    readonly other: string;
    readonly windows: Names;
    /** Those of the two that do not say that the place may be shared. */
    readonly silent: Names;
  }) =>
    `${activity} and ${other} go on at one place at the same time in ${windows.join(' and ')}: ${silent.join(' and ')} ${silent.length === 1 ? 'does' : 'do'} not say that it may be shared`,
};

export const sayOfPlan = saysBy(planSentences);

// Why work does not fit a window. Parameters: names as typed, minutes, moments; `others`: it holds once
// the other reasons are cured.
import { dueWords, durationText, localText, localTimeOf } from '../calendar/index.js';
import { saysBy, type Moment, type Worded } from '../model/index.js';
import { namesText } from './names-text.js';

type Names = readonly string[];
interface Never {
  readonly activities: Names;
  readonly window: string;
  /** Windows beside it of which the same holds. */
  readonly more?: number;
}
/** Work that must be done together, as the line is open between. */
export interface Block {
  /** Activities that open the line; empty: they were done before. */
  readonly openers: Names;
  readonly makers: Names;
}
interface Dated extends Moment {
  readonly activity: string;
}
const momentText = ({ at, zone }: Moment): string => localText(localTimeOf(at, zone));
const due = ({ at, zone }: Moment): string => dueWords(at, zone);
const datesText = (dates: readonly Dated[], words: (moment: Moment) => string): string =>
  dates.map((date) => `${date.activity} ${words(date)}`).join(', ');
const cured = (others: boolean): string => (others ? 'with the rest of the reasons cured, ' : '');
const likewise = (more = 0): string => (more > 0 ? `; likewise in ${more} more` : '');
const s = (names: Names, one: string, many: string): string => (names.length > 1 ? many : one);
const metres = (size: number): number => Math.ceil(size * 10 - 1e-6) / 10;
/** That the work of a block is not all placed together: `A cannot be made good`. */
export const unmade = ({ openers, makers }: Block): string =>
  openers.length > 0
    ? `${openers.join(' and ')} cannot be made good`
    : `${makers.join(' and ')}, which make good what was done before, cannot all be finished`;
export const reasonSentences = {
  withdrawn: ({ window, more }: Omit<Never, 'activities'>) =>
    `${window} is withdrawn and takes no work${likewise(more)}`,
  'fixed-elsewhere': ({
    activities,
    fixed,
    more,
  }: Omit<Never, 'window'> & { readonly fixed: string }) =>
    `${namesText(activities)} ${s(activities, 'is', 'are')} fixed in ${fixed} by the planner${likewise(more)}`,
  'lines-not-blocked': ({
    activities,
    open,
    window,
    blocked,
    more,
  }: Never & { readonly open: Names; readonly blocked: Names }) =>
    `${namesText(activities)} ${s(activities, 'needs', 'need')} ${open.join(' and ')} blocked; ${window} blocks ${blocked.join(', ')}${likewise(more)}`,
  'outside-extent': ({
    activities,
    below,
    above,
    window,
    from,
    to,
    more,
  }: Never & {
    readonly below: number;
    readonly above: number;
    readonly from: number;
    readonly to: number;
  }) => {
    const reach = [
      ...(below > 0 ? [`${metres(below)} m below`] : []),
      ...(above > 0 ? [`${metres(above)} m above`] : []),
    ].join(' and ');
    return `${namesText(activities)} ${s(activities, 'reaches', 'reach')} ${reach} what ${window} covers (${metres(from)} to ${metres(to)} m)${likewise(more)}`;
  },
  'isolation-not-booked': ({
    activities,
    sections,
    window,
    more,
  }: Never & { readonly sections: Names }) =>
    `${namesText(activities)} ${s(activities, 'needs', 'need')} ${sections.join(' and ')} dead; ${window} does not book ${s(sections, 'it', 'them')}${likewise(more)}`,
  'nothing-left': ({ package: name }: { readonly package: string }) =>
    `nothing of ${name} is left to do`,
  'not-worked-out': ({
    package: name,
    window,
  }: {
    readonly package: string;
    readonly window: string;
  }) =>
    `not worked out: whether there is time for ${name} in ${window}, since other pairs took all the steps; ask for it with fewer windows or packages`,
  'wait-in-a-ring': ({ activities }: { readonly activities: Names }) =>
    `${activities.join(', ')} wait for one another in a ring`,
  'longer-than-a-shift': ({
    activity,
    needed,
    longest,
    changeover,
  }: {
    readonly activity: string;
    readonly needed: number;
    readonly longest: number;
    readonly changeover: number;
  }) =>
    `${activity} needs ${durationText(needed)} in one go; a shift lasts ${durationText(longest)} at the longest, and handing over takes its last ${durationText(changeover)}, so no window takes it, however long`,
  'no-time-together': ({
    window,
    proven,
    upTo,
    noLaterEnd,
  }: {
    readonly window: string;
    readonly proven: boolean;
    /** Ends up to so many minutes later were looked at; null: a later end does. */
    readonly upTo: number | null;
    /** That no such end does is certain. */
    readonly noLaterEnd: boolean;
  }) => {
    const now = proven
      ? `no time in ${window} takes all of it together`
      : `no way was found to do all of it in ${window}`;
    if (upTo === null) return now;
    return noLaterEnd
      ? `${now}, nor would an end up to ${durationText(upTo)} later`
      : `${now}, and none with an end up to ${durationText(upTo)} later`;
  },
  'more-resource-would-fit': ({
    resources,
    each,
    window,
    others,
  }: {
    readonly resources: Names;
    /** It takes more of all of them. */
    readonly each: boolean;
    readonly window: string;
    readonly others: boolean;
  }) =>
    `there is not enough of ${resources.join(each ? ' and ' : ' or ')} at the right time in ${window}; ${cured(others)}with more${each && resources.length > 1 ? ' of each' : ''} it would fit`,
  'with-later-end': ({
    minutes,
    proven,
    why,
  }: {
    readonly minutes: number;
    readonly proven: boolean;
    readonly why: Worded;
  }) =>
    `with an end ${durationText(minutes)} later${proven ? '' : ', as far as was looked'}: ${why.text}`,
  'side-by-side-would-fit': ({
    activities,
    window,
    others,
  }: {
    readonly activities: Names;
    readonly window: string;
    readonly others: boolean;
  }) =>
    `${activities.join(', ')} must have the place alone; ${cured(others)}side by side with other work it would fit ${window}`,
  'fits-but-late': ({
    window,
    dates,
    others,
  }: {
    readonly window: string;
    readonly dates: readonly Dated[];
    readonly others: boolean;
  }) => `${cured(others)}it fits ${window}, but not by the key date (${datesText(dates, due)})`,
  'sooner-would-fit': ({
    dates,
    others,
  }: {
    readonly dates: readonly Dated[];
    readonly others: boolean;
  }) =>
    `${cured(others)}it would fit if it could begin sooner (not before: ${datesText(dates, momentText)})`,
  'no-usable-stretch': ({
    activity,
    needed,
    unit,
    window,
    longest,
    breaks,
  }: {
    readonly activity: string;
    readonly needed: number;
    /** It is one unit that needs so long. */
    readonly unit: boolean;
    readonly window: string;
    readonly longest: number;
    readonly breaks: Names;
  }) => {
    const what = unit ? 'for one unit with set up and make safe' : 'in one go';
    const by = breaks.length > 0 ? `, broken by ${breaks.join(' and ')}` : '';
    return `${activity} needs ${durationText(needed)} ${what}; the longest usable stretch of ${window} is ${durationText(longest)}${by}`;
  },
  'resource-not-there': ({
    activities,
    resource,
    window,
  }: {
    readonly activities: Names;
    readonly resource: string;
    /** Null: at no time. */
    readonly window: string | null;
  }) =>
    `${namesText(activities)} ${s(activities, 'needs', 'need')} ${resource}; none is there ${inTimeOf(window)}`,
  'resource-short': ({
    activities,
    resource,
    amount,
    most,
    window,
  }: {
    readonly activities: Names;
    readonly resource: string;
    readonly amount: number;
    readonly most: number;
    readonly window: string | null;
  }) =>
    `${namesText(activities)} ${s(activities, 'needs', 'need')} ${amount} of ${resource}; at most ${most} ${most === 1 ? 'is' : 'are'} there ${inTimeOf(window)}`,
  'curing-not-known': ({ activity, pour }: { readonly activity: string; readonly pour: string }) =>
    `${activity} waits for ${pour} to cure, and the temperatures given end before it has`,
  'curing-too-late': ({
    activity,
    pour,
    ready,
    window,
  }: {
    readonly activity: string;
    readonly pour: string;
    readonly ready: Moment;
    readonly window: string;
  }) =>
    `${activity} waits for ${pour} to cure: not before ${momentText(ready)}, too late for ${window}`,
  'may-not-begin-before': ({
    activity,
    from,
    late,
    window,
  }: {
    readonly activity: string;
    readonly from: Moment;
    readonly late: number;
    readonly window: string;
  }) =>
    `${activity} may not begin before ${momentText(from)}, ${durationText(late)} too late for ${window}`,
  'after-its-key-date': ({
    activity,
    late,
    due: at,
  }: {
    readonly activity: string;
    readonly late: number;
    readonly due: Moment;
  }) =>
    `${activity} would finish ${durationText(late)} after its key date ${due(at)} at the soonest`,
  'not-shown': ({ window, count }: { readonly window: string; readonly count: number }) =>
    `not shown to fit ${window}: no way was found to do its ${count} activities in time, but not every order of them was looked at`,
  'window-too-short': ({ window }: { readonly window: string }) => `${window} is too short for it`,
  'not-by-key-date': ({ dates }: { readonly dates: readonly Dated[] }) =>
    `it would not be done by the key date (${datesText(dates, due)})`,
  'not-sooner': ({ dates }: { readonly dates: readonly Dated[] }) =>
    `it could not begin sooner (not before: ${datesText(dates, momentText)})`,
  'alone-leaves-little': ({ window }: { readonly window: string }) =>
    `work that must have its place alone leaves too little time in ${window}`,
  'resource-at-the-time': ({
    resource,
    window,
  }: {
    readonly resource: string;
    readonly window: string;
  }) => `there is not enough of ${resource} at the right time in ${window}`,
  'too-short': ({
    minutes,
    proven,
    others,
    end,
    otherDay,
    leave,
    bars,
    window,
  }: {
    readonly minutes: number;
    /** No fewer minutes do. */
    readonly proven: boolean;
    /** The rest of the reasons have to be cured beside it. */
    readonly others: boolean;
    readonly end: Moment;
    /** The end would lie on another day than it does. */
    readonly otherDay: boolean;
    /** Units that would be left out instead. */
    readonly leave: readonly {
      readonly activity: string;
      readonly out: number;
      readonly of: number;
    }[];
    /** What takes hours of the window from work. */
    readonly bars: readonly {
      readonly rule: string;
      readonly activities: Names;
      readonly minutes: number;
    }[];
    readonly window: string;
  }) => {
    const cures = [
      `the end moves to ${otherDay ? momentText(end) : momentText(end).slice(11)}`,
      ...leave.map(
        ({ activity, out, of }) =>
          `${out} of ${of} units ${out === 1 ? 'is' : 'are'} left out (${activity})`,
      ),
    ].join(', or if ');
    const barred = bars.map(
      (bar) =>
        `; "${bar.rule}" bars ${namesText(bar.activities)} for ${bar.activities.length > 1 ? 'up to ' : ''}${durationText(bar.minutes)} of ${window}`,
    );
    return `short by ${proven ? '' : 'at most '}${durationText(minutes)}; ${cured(others)}fits if ${cures}${barred.join('')}`;
  },
  'not-made-good': ({
    window,
    minutes,
    proven,
    ...block
  }: Block & {
    readonly window: string;
    /** By how much the window is too short; null: not said here. */
    readonly minutes: number | null;
    readonly proven: boolean;
  }) =>
    minutes === null
      ? `${unmade(block)} in ${window}`
      : `${unmade(block)} in ${window}: short by ${proven ? '' : 'at most '}${durationText(minutes)}`,
};

const inTimeOf = (window: string | null): string =>
  window === null ? 'at any time' : `in the usable time of ${window}`;

export const sayReason = saysBy(reasonSentences);

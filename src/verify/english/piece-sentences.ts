// English for rules that pieces of a plan break.
import type { Phrase, SayPhrase } from '../plan-types.js';

type Of = { readonly activity: string };
type InWindow = Of & { readonly window: string };
type WithOther = Of & { readonly other: string };
type Because = { readonly why: Phrase };

export const pieceSentences = {
  'no-such-activity': ({ activity }: Of) => `the plan has no ${activity}`,
  'no-such-window': ({ window }: { readonly window: string }) => `the plan has no window ${window}`,
  'placed-with-none-left': ({ activity }: Of) =>
    `${activity} is placed though nothing of it is left`,
  'placed-more-than-once': ({ activity }: Of) => `${activity} is placed more than once`,
  'two-pieces-at-once': ({ activity }: Of) => `${activity} has two pieces at the same time`,
  'piece-of-units': ({ activity, units }: Of & { readonly units: number }) =>
    `${activity} has a piece of ${units} units`,
  'minutes-given': ({
    activity,
    minutes,
    needed,
  }: Of & { readonly minutes: number; readonly needed: number }) =>
    `${activity} is given ${minutes} minutes and takes ${needed}`,
  'units-given': ({
    activity,
    units,
    left,
  }: Of & { readonly units: number; readonly left: number }) =>
    `${activity} is given ${units} units and has ${left} left`,

  'begins-before-it-may': ({ activity }: Of) => `${activity} begins before it may`,
  'outside-in-window': ({ activity }: Of) => `${activity} is outside work and needs no window`,
  'inside-without-window': ({ activity }: Of) => `${activity} is inside work and has no window`,
  'in-unknown-window': ({ activity, window }: InWindow) =>
    `${activity} is in ${window}, which the plan has not`,
  'in-withdrawn-window': ({ activity, window }: InWindow) =>
    `${activity} is in ${window}, which is withdrawn`,
  'fixed-in': ({ activity, window }: InWindow) => `${activity} is fixed in ${window}`,
  'line-stays-open': ({ activity, window, line }: InWindow & { readonly line: string }) =>
    `${activity} needs ${line}, which ${window} leaves open`,
  'extent-outside': ({ activity, window }: InWindow) => `${activity} reaches outside ${window}`,
  'section-live': ({ activity, window, section }: InWindow & { readonly section: string }) =>
    `${activity} needs ${section} dead, which ${window} does not book`,
  'not-inside-window': ({ activity, window }: InWindow) => `${activity} is not inside ${window}`,
  'not-usable-time': ({ activity, window }: InWindow) =>
    `${activity} is in time of ${window} that is not usable`,
  'goes-on-in': ({ activity, why }: Of & Because, say: SayPhrase) =>
    `${activity} goes on in ${say(why)}`,
  'the-lead-in': () => 'the lead-in',
  'time-not-isolated': () => 'time that is not isolated',
  'the-lead-out': () => 'the lead-out',
  'the-required-margin': () => 'the required margin',
  'a-shift-changeover': () => 'a shift changeover',
  'the-curfew': ({ name }: { readonly name: string }) => `the curfew "${name}"`,
  'closed-time': ({ rule }: { readonly rule: Parameters<SayPhrase>[0] }, say: SayPhrase) =>
    `closed time: ${say(rule)}`,

  'begins-before-link': ({
    activity,
    from,
    other,
    minutes,
  }: WithOther & { readonly from: 'start' | 'finish'; readonly minutes: number }) =>
    `${activity} begins before the ${from} of ${other} and ${minutes} minutes`,
  'begins-before-cured': (
    { activity, pour, why }: Of & Because & { readonly pour: string },
    say: SayPhrase,
  ) => `${activity} begins before ${pour} has cured: ${say(why)}`,
  'curing-not-in-plan': () => 'the plan has no concrete',
  'curing-temperature-unknown': () => 'no temperature is known for a part of the time',
  /** Decimal text, in the unit of the maturity model. */
  'curing-reached': ({ reached, wanted }: { readonly reached: string; readonly wanted: string }) =>
    `${reached} of ${wanted} is reached`,
  'resource-overused': ({
    activity,
    used,
    resource,
    there,
  }: Of & { readonly used: number; readonly resource: string; readonly there: number }) =>
    `${activity} and what goes on beside it use ${used} of ${resource}, and ${there} is there`,
  'must-be-alone': ({ activity, other }: WithOther) =>
    `${activity} must be alone at its place, and ${other} goes on there at the same time`,
  'made-good-too-soon': ({ activity, opened }: Of & { readonly opened: string }) =>
    `${activity} makes ${opened} good and begins before ${opened} has finished`,
  'line-not-made-good': ({
    activity,
    window,
    member,
    inPart,
  }: Of & {
    readonly window: string | null;
    readonly member: string;
    readonly inPart: boolean;
  }) =>
    `${activity} is done in ${window ?? 'no window'}, and ${member}, without which the line is not fit to run, ${inPart ? 'is not all placed' : 'is not all in that window'}`,
};

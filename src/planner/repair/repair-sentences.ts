// What of a plan made before no longer holds, and why pieces of it move. Windows may be named by what they are called.
import { saysBy, type Worded } from '../../model/index.js';
import type { LedgerKind } from '../../rules/index.js';

type Nothing = Readonly<Record<never, never>>;
interface Of {
  readonly activity: string;
}
interface In extends Of {
  readonly window: string;
}
interface Window {
  readonly window: string;
}
interface Name {
  readonly name: string;
}
/** A window, or null for work that needs none. */
interface Where {
  readonly window: string | null;
}
const where = (window: string | null): string => window ?? 'outside work';

export const repairSentences = {
  'plan-has-no': ({ activity }: Of) => `the plan has no ${activity}`,
  'placed-though-done': ({ activity }: Of) => `${activity} is placed though nothing of it is left`,
  'placed-twice': ({ activity }: Of) => `${activity} is placed more than once`,
  'visit-of-units': ({ activity, units }: Of & { readonly units: number }) =>
    `${activity} has a visit of ${units} units`,
  'given-and-takes': ({
    activity,
    taken,
    needed,
  }: Of & { readonly taken: number; readonly needed: number }) =>
    `${activity} is given ${taken} minutes and takes ${needed}`,
  'given-and-left': ({
    activity,
    units,
    left,
  }: Of & { readonly units: number; readonly left: number }) =>
    `${activity} is given ${units} units and has ${left} left`,
  'two-visits': ({ activity }: Of) => `${activity} has two visits at the same time`,
  'before-it-may': ({ activity }: Of) => `${activity} begins before it may`,
  'needs-no-window': ({ activity }: Of) => `${activity} is outside work and needs no window`,
  'in-curfew': ({ activity, curfew }: Of & { readonly curfew: string }) =>
    `${activity} goes on in the curfew "${curfew}"`,
  'has-no-window': ({ activity }: Of) => `${activity} is inside work and has no window`,
  'window-not-in-plan': ({ activity, window }: In) =>
    `${activity} is in ${window}, which the plan has not`,
  'in-withdrawn': ({ activity, window }: In) => `${activity} is in ${window}, which is withdrawn`,
  'is-fixed-in': ({ activity, window }: In) => `${activity} is fixed in ${window}`,
  'line-left-open': ({ activity, line, window }: In & { readonly line: string }) =>
    `${activity} needs ${line}, which ${window} leaves open`,
  'reaches-outside': ({ activity, window }: In) => `${activity} reaches outside ${window}`,
  'section-not-booked': ({ activity, section, window }: In & { readonly section: string }) =>
    `${activity} needs ${section} dead, which ${window} does not book`,
  'not-inside': ({ activity, window }: In) => `${activity} is not inside ${window}`,
  'takes-time-of': ({ activity, kind, window }: In & { readonly kind: LedgerKind }) =>
    `${activity} takes time of ${kind} in ${window}`,
  'time-not-usable': ({ activity, window }: In) =>
    `${activity} is in time of ${window} that is not usable`,
  'begins-too-soon': ({
    activity,
    from,
    other,
    minutes,
  }: Of & {
    readonly from: 'start' | 'finish';
    readonly other: string;
    readonly minutes: number;
  }) => `${activity} begins before the ${from} of ${other} and ${minutes} minutes`,
  'uses-more-than-there': ({
    activity,
    amount,
    resource,
  }: Of & { readonly amount: number; readonly resource: string }) =>
    `${activity} and what goes on beside it use ${amount} of ${resource}, more than is there`,
  'in-closed-time': ({ activity, rule }: Of & { readonly rule: Worded }) =>
    `${activity} goes on in closed time: ${rule.text}`,
  'not-cured': ({ activity, pour, why }: Of & { readonly pour: string; readonly why: Worded }) =>
    `${activity} begins before ${pour} has cured: ${why.text}`,
  'no-concrete': (_: Nothing) => 'the plan has no concrete',
  'temperature-not-known': (_: Nothing) => 'no temperature is known for a part of the time',
  'maturity-reached': ({
    reached,
    wanted,
  }: {
    readonly reached: number;
    readonly wanted: number;
  }) => `${reached.toFixed(1)} of ${wanted} is reached`,

  'no-longer-in-plan': ({ activity }: Of) => `the plan has no ${activity} any more`,
  'window-not-there': ({ activity, window }: In) =>
    `${activity} is in ${window}, which is not there`,
  'nothing-left-to-do': ({ activity }: Of) => `${activity} has nothing left to be done`,
  'left-placed-later': ({ activity, window }: Of & Where) =>
    `what ${activity} has left is all placed later than its visit to ${where(window)}`,
  'given-in-and-left': ({
    activity,
    units,
    window,
    left,
  }: Of & Where & { readonly units: number; readonly left: number }) =>
    `${activity} is given ${units} units in ${where(window)} and has ${left} left`,

  'no-time-left-for-it': (_: Nothing) => 'there is no time left for it',
  'window-gone': ({ window }: Window) => `${window} is not in the plan any more`,
  'window-now-withdrawn': ({ window }: Window) => `${window} is withdrawn`,
  'window-takes-none': ({ window }: Window) => `${window} takes no work any more`,
  'window-lacks-time': ({ window }: Window) => `${window} no longer has the time for it`,
  'made-good-with': ({ name }: Name) => `made good with ${name}, which moves`,
  'waits-for-mover': ({ name }: Name) => `waits for ${name}, which moves`,
  'mover-waits-for-it': ({ name }: Name) => `${name} waits for it and moves`,
  'moves-with-others': (_: Nothing) =>
    'could stay by itself; in the plan found it moves with other work',
  'place-taken-by': ({ names }: { readonly names: readonly string[] }) =>
    `needs the place that ${names.join(' and ')} takes`,
  'shared-with': ({
    resource,
    names,
  }: {
    readonly resource: string;
    readonly names: readonly string[];
  }) => `${resource} is shared with ${names.join(' and ')}`,
  'too-late-there': ({ window }: Where) =>
    `in ${window ?? 'the time left'} a key date would not be kept`,
  'lacks-time-for-all': ({ window }: Where) =>
    `${window ?? 'the time left'} no longer has the time for all that was in it`,
  'had-no-place': (_: Nothing) => 'it had no place before',
};

export const sayRepair = saysBy(repairSentences);

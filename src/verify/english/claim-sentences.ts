// English for what a plan says of itself and is not so.
import type { Phrase, SayPhrase } from '../plan-types.js';

type Of = { readonly activity: string };
type Pair = Of & { readonly other: string };
type OfPackage = { readonly package: string };
/** One of the values that a plan is judged by. */
type OfAim = { readonly aim: string };
type Value = { readonly value: number };
type Stated = { readonly stated: number };
type Because = { readonly why: Phrase };

export const claimSentences = {
  'listed-though-unknown': ({ activity }: Of) =>
    `${activity} is listed as not placed, and the plan has it not`,
  'listed-though-placed': ({ activity }: Of) => `${activity} is listed as not placed, and it is`,
  'listed-twice': ({ activity }: Of) => `${activity} is listed twice as not placed`,
  'listed-without-reason': ({ activity }: Of) =>
    `${activity} is listed as not placed without a reason`,
  /** `units`: of work of which some is placed. */
  'neither-placed-nor-listed': ({ activity, units }: Of & { readonly units: number | null }) =>
    `${units === null ? `${activity} is` : `${units} units of ${activity} are`} neither placed nor listed as left out`,
  'nothing-of-package-left': ({ package: pack }: OfPackage) =>
    `nothing of ${pack} is left to be placed`,
  'not-all-placed': ({ activity }: Of) => `${activity} is not all placed`,
  'finished-after-key-date': ({ activity }: Of) => `${activity} is finished after its key date`,
  'still-fits': ({ package: pack, window }: { package: string; window: string }) =>
    `${pack} is said to fit ${window} no more, but breaks no rule there as it was placed before`,
  'minutes-left-stated': ({
    stated,
    window,
    package: pack,
    left,
  }: OfPackage & {
    readonly stated: number | null;
    readonly window: string;
    readonly left: number;
  }) => `${stated ?? 'no'} minutes are stated as left in ${window} after ${pack}, but ${left} are`,

  'finish-not-last-end': () => 'the stated finish is not the end of the last piece',
  'windows-stated': ({ stated, used }: Stated & { readonly used: number }) =>
    `${stated} windows are stated as used, but ${used} are`,
  'all-can-be-placed': () => 'the check found a better plan: all work can be placed',
  'better-plan-found': ({ aim, theirs, stated }: OfAim & Stated & { readonly theirs: number }) =>
    `the check found a better plan: ${aim} can be ${theirs} where ${stated} is stated`,
  'values-told': ({ names }: { readonly names: readonly string[] }) =>
    `the values told are ${names.join(', ')}`,
  'value-stated': ({ aim, stated, value }: OfAim & Stated & Value) =>
    `${aim} is stated as ${stated} but is ${value}`,
  'first-value-two-ways': () => 'the first value is stated in two ways',
  'words-not-values': ({ text }: { readonly text: string }) =>
    `"${text}" is not what the values say`,
  'bound-above-value': ({ aim, bound, value }: OfAim & Value & { readonly bound: number }) =>
    `${aim}: the bound ${bound} is above the value ${value}`,
  'proven-but-better': ({ aim, by }: OfAim & { readonly by: number }) =>
    `${aim} is stated as proven but may be better by ${by}`,
  'bound-proves': ({ aim }: OfAim) =>
    `${aim} has a bound that proves it, but is not stated as proven`,

  'key-date-missing': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} is missing or has another date`,
  'key-date-forecast': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} has a forecast that the plan does not make`,
  'key-date-stated-missed': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} is met but stated as missed`,
  'key-date-stated-met': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} is stated as met but is not`,
  'key-date-float-unplaced': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} has float though work is not placed`,
  'key-date-extra': ({ package: pack }: OfPackage) =>
    `a key date is stated for ${pack} that the plan does not have`,
  'key-date-late-otherwise': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} is late by other minutes than its float says`,
  'key-date-float-too-long': ({ package: pack }: OfPackage) =>
    `the key date of ${pack} has more float than there is time up to it`,
  'key-date-float-pushed': ({ package: pack, activity }: OfPackage & Of) =>
    `the key date of ${pack} has more float than ${activity} leaves when it is pushed on`,

  'float-stated-twice': ({ activity }: Of) =>
    `the float of ${activity} is stated twice, or it is not placed`,
  'float-of': ({ activity, why }: Of & Because, say: SayPhrase) =>
    `the float of ${activity} ${say(why)}`,
  'free-of-others': ({ why }: Because, say: SayPhrase) => `free of others ${say(why)}`,
  'float-missing': () => 'is missing',
  'float-from-elsewhere': () => 'does not start from where it is placed',
  'float-below-free': () => 'is less than its free float',
  'float-not-critical': () => 'and the word critical do not agree',
  'float-wrong-minutes': () => 'is counted in the wrong minutes',
  'float-not-to-latest': () => 'does not reach its latest finish',
  'float-not-its-length': () =>
    'has a latest start that is not its length before its latest finish',
  'float-back-in-time': () => 'goes back in time',
  'float-leaves-usable': () => 'leaves the usable time of its window',
  'float-past-end': () => 'goes past the end of the plan',
  'float-past-key-date': () => 'passes its key date',
  'float-moves': ({ other }: { readonly other: string }) => `moves ${other} on`,
  'float-moves-for-curing': ({ other }: { readonly other: string }) =>
    `moves ${other} on, for curing`,
  'float-takes-from-others': () => 'takes plant or a place that others have',

  'listed-not-stated': ({ activity, other }: Pair) =>
    `${activity} and ${other} are listed as not stated, and nothing is open between them`,
  'pair-listed-twice': ({ activity, other }: Pair) => `${activity} and ${other} are listed twice`,
  'place-not-stated': ({ activity, other }: Pair) =>
    `${activity} and ${other} are at one place at the same time, and the plan does not say so`,
  'handback-not-stated': ({ activity, other }: Pair) =>
    `the line is handed back between ${activity} and ${other}, and the plan does not say that nothing is stated of it`,
};

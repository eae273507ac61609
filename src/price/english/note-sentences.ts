// English for what a price leaves out, and what it takes to be so because nobody said.
import { clockWords } from '../../calendar/clock-words.js';
import type { Moment } from '../../model/index.js';

type OfPackage = {
  readonly package: string;
};
type OfWindow = {
  readonly window: string;
};

export const priceNoteSentences = {
  'no-delay-price': () => 'Delay to trains is not priced: the price book has no entry for it.',
  'no-train-listed': ({ window }: OfWindow) =>
    `No train is listed after window ${window}, so delay to trains is priced at nothing.`,
  'train-list-ends': (given: {
    readonly passes: Moment;
    readonly train: string;
    readonly minutes: number;
  }) =>
    `The train list ends at ${clockWords(given.passes.at, given.passes.zone)} (${given.train}), which an overrun of ${given.minutes} min or more holds: trains after it are not priced.`,
  'left-over-unpriced': () =>
    'Work left over by an overrun is not priced here: all planned work is taken to be done before the line is given back.',
  'key-dates-without-plan': () =>
    'No plan of the work was given, so key dates that an overrun makes late are not priced.',
  'key-date-unplaced': ({ package: pack }: OfPackage) =>
    `Not all of the work of ${pack} has a place, so what missing its key date costs is not known.`,
  'key-date-unpriced': ({ package: pack }: OfPackage) =>
    `Missing the key date of ${pack} is not priced: the price book has no sum for it.`,
  'no-restriction-price': () =>
    'A speed restriction after handback is not priced: the price book has no entry for it.',
  'speed-left-unpriced': ({
    speed,
    activity,
  }: {
    readonly speed: string;
    readonly activity: string;
  }) => `${speed} is left on the line after ${activity}: what it costs is not priced.`,
  'restriction-beyond-trains': () =>
    'The speed restriction may last beyond the last train listed: the trains after it are not priced. Give the number of trains in the price book.',
  'no-rate': ({ resource }: { readonly resource: string }) =>
    `The time of ${resource} is not priced: it has no rate an hour.`,
  'nobody-on-site': () => 'Plant and people standing by are not priced: no resource is on site.',

  'stands-from-start': () =>
    'No plan of the work was given, so everything with a rate that is there at the booked end is taken to stand by from the start of the window.',
  'restriction-claimed-twice': () =>
    'The speed restriction is priced by the number of trains in the price book, and recorded lateness may hold the same minutes: see that they are not claimed twice.',
  'cancelled-without-minutes': ({ train }: { readonly train: string }) =>
    `${train} was cancelled, but the price book says no minutes for a cancelled train: it is priced at nothing.`,
  'trains-not-recorded': ({ count }: { readonly count: number }) =>
    `${count} late ${count === 1 ? 'train has' : 'trains have'} no recorded time and ${count === 1 ? 'is' : 'are'} worked out from the queue behind the handback.`,
  'train-not-due': ({ train, window }: OfWindow & { readonly train: string }) =>
    `${train} has a recorded time but is not among the trains due after ${window}: it is not priced.`,
};

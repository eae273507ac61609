import * as z from 'zod/mini';
import { unnamedKeyDate } from './unnamed-key-date.js';
import { weekdays } from './weekdays.js';

z.config({ jitless: true });

const minutes = z.number().check(z.int(), z.minimum(0), z.maximum(100_000));
const someMinutes = minutes.check(z.minimum(1));
const clock = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'a time of day such as 23:00'));
const words = z.string().check(z.minLength(1));
const source = z.optional(words);

/**
 * A decimal number, never negative. Best written as text (`"71.43"`): it is then what was typed, to the last digit.
 * A JSON number is taken as its shortest decimal writing.
 */
const decimal = z.pipe(
  z.union([
    z.string().check(z.regex(/^\d{1,12}(\.\d{1,12})?$/, 'a plain decimal number such as 71.43')),
    z.number().check(z.minimum(0), z.maximum(1e12)),
  ]),
  z.transform((value) => String(value)),
);

/**
 * Money per minutes: `"71.43"` a minute, or `{ "amount": "900", "perMinutes": 60 }` where the rate is no round sum a
 * minute (a year's cost over a year's delay minutes).
 */
const rate = z.pipe(
  z.union([
    decimal,
    z.strictObject({
      amount: decimal,
      perMinutes: z.number().check(z.int(), z.minimum(1), z.maximum(1e12)),
    }),
  ]),
  z.transform((value) => (typeof value === 'string' ? { amount: value, perMinutes: 1 } : value)),
);

const delaySchema = z.discriminatedUnion('by', [
  /** From the trains due after the booked end: minutes late x weight x rate. */
  z
    .strictObject({
      by: z.literal('train'),
      rate,
      /** Least time between two held trains once the line is given back. */
      headwayMinutes: z._default(minutes, 0),
      /** A train later than this counts as cancelled. Absent: none is. */
      cancelAfterMinutes: z.optional(minutes),
      /** Minutes a cancelled train counts as; absent: `cancelAfterMinutes`. */
      deemedMinutes: z.optional(minutes),
      /**
       * `keep-path`: the trains behind a cancelled one gain nothing by it, so a longer overrun never costs less.
       * `free-path`: they do, so at the minute of a cancellation the cost can fall; the curve then lists each fall.
       */
      cancelledTrains: z._default(z.enum(['keep-path', 'free-path']), 'keep-path'),
      source,
    })
    .check(
      z.refine(
        (d) =>
          d.deemedMinutes === undefined ||
          (d.cancelAfterMinutes !== undefined && d.deemedMinutes >= d.cancelAfterMinutes),
        'deemedMinutes may not be less than cancelAfterMinutes, which must be given: a cancelled train would cost less than a late one',
      ),
    ),
  /** A rate for each minute of the overrun, by how far in it lies; each band runs to the next. */
  z
    .strictObject({
      by: z.literal('bands'),
      bands: z.array(z.strictObject({ afterMinutes: minutes, rate })).check(z.minLength(1)),
      source,
    })
    .check(
      z.refine(
        (d) => d.bands.every((b, i) => i === 0 || b.afterMinutes > d.bands[i - 1]!.afterMinutes),
        'bands must be in order, each afterMinutes above the one before',
      ),
    ),
]);

const factorSchema = z
  .strictObject({
    name: words,
    factor: decimal,
    on: z._default(z.enum(['labour', 'plant', 'all']), 'all'),
    /** Local clock band in which it holds, `from` included; both or neither. `to` at or before `from` is on the next day. */
    from: z.optional(clock),
    to: z.optional(clock),
    /** Days on which the band starts; absent: every day. */
    days: z.optional(z.array(z.enum(weekdays))),
    /** Holds only where the band starts on a public holiday. */
    holidaysOnly: z._default(z.boolean(), false),
    source,
  })
  .check(
    z.refine(
      (f) => (f.from === undefined) === (f.to === undefined),
      'give both from and to, or neither for the whole day',
    ),
  );

/**
 * When a resource comes to the site and when it leaves, where that is not as its planned work says. An entry with a window
 * goes before one without.
 */
const onSiteSchema = z.strictObject({
  resource: words,
  window: z.optional(words),
  /** Called so many minutes before its first work. */
  callMinutesBefore: z._default(minutes, 0),
  /**
   * `at handback`: it stays until the line is given back, however late. `after its work`: an overrun does not keep it.
   * Absent: it is kept where it is still at work when the last piece of work of the window begins.
   */
  leaves: z.optional(z.enum(['after its work', 'at handback'])),
  /** Leaves so many minutes after its last work, where it does not stay until handback. */
  leavesMinutesAfter: z._default(minutes, 0),
});

const standingSchema = z.strictObject({
  /** Resources that are people; the others are plant. */
  labour: z._default(z.array(words), []),
  factors: z._default(z.array(factorSchema), []),
  /** Where several factors hold at once: the highest, or one times the other. */
  combine: z._default(z.enum(['highest', 'multiply']), 'highest'),
  /**
   * What a resource's least hours are held against. `call-out`: its whole time on site from its call, so an overrun costs
   * only what it adds to what was owed anyway. `overrun`: the overrun alone, for terms by which its first minute is a new hire.
   */
  leastHours: z._default(z.enum(['overrun', 'call-out']), 'call-out'),
  /** Time is charged in started blocks of so many minutes. */
  blockMinutes: z._default(someMinutes, 1),
  onSite: z._default(z.array(onSiteSchema), []),
  source,
});

export const headsOfCost = [
  'operator-delay',
  'standing',
  'fixed',
  'late-opening',
  'restriction',
  're-booking',
  'key-dates',
  'damages',
] as const;

const fixedSchema = z.strictObject({
  code: words,
  name: words,
  /** Charged when the overrun is more than this. */
  afterMinutes: minutes,
  amount: decimal,
  source,
});

/**
 * A charge for each interval begun after the booked end: a part of the full rate that grows by how late it is. An interval
 * belongs to the band in which it begins, and each band starts its own count.
 */
const lateOpeningSchema = z
  .strictObject({
    code: words,
    name: words,
    /** At 100 per cent: money per minutes, so 18,000 an hour is `{ "amount": "18000", "perMinutes": 60 }`. */
    rate,
    /** Length of an interval; a band may have its own. */
    intervalMinutes: someMinutes,
    bands: z._default(
      z
        .array(
          z.strictObject({
            afterMinutes: minutes,
            intervalMinutes: z.optional(someMinutes),
            percent: z._default(decimal, '100'),
            /** The least and the most that one interval of the band costs. */
            least: z.optional(decimal),
            most: z.optional(decimal),
          }),
        )
        .check(z.minLength(1)),
      [{ afterMinutes: 0, percent: '100' }],
    ),
    /** The most that one late handback costs. */
    cap: z.optional(decimal),
    source,
  })
  .check(
    z.refine(
      (item) =>
        item.bands.every((b, i) => {
          const before = item.bands[i - 1];
          if (!before) return true;
          const length = b.afterMinutes - before.afterMinutes;
          return length > 0 && length % (before.intervalMinutes ?? item.intervalMinutes) === 0;
        }),
      'bands must be in order, and each must hold a whole number of its intervals before the next begins',
    ),
    z.refine(
      (item) =>
        item.bands.every(
          (b) => b.least === undefined || b.most === undefined || Number(b.least) <= Number(b.most),
        ),
      'least may not be more than most',
    ),
  );

const restrictionSchema = z.strictObject({
  /** There is a restriction when the overrun is more than this. */
  afterMinutes: z._default(minutes, 0),
  minutesLostPerTrain: decimal,
  /** Counted from handback. */
  liftedAfterMinutes: minutes,
  /** Trains until it is lifted, where the list of trains does not reach so far. */
  trains: z.optional(z.number().check(z.int(), z.minimum(0), z.maximum(100_000))),
  /** Absent: the rate of operator delay by train. */
  rate: z.optional(rate),
  source,
});

const damagesSchema = z.strictObject({
  rate,
  /** Minutes of grace. */
  afterMinutes: z._default(minutes, 0),
  /** Charged in started blocks. */
  blockMinutes: z._default(someMinutes, 1),
  cap: z.optional(decimal),
  /** Heads of actual loss that damages stand in place of. */
  replaces: z._default(z.array(z.enum(headsOfCost)), [
    'operator-delay',
    'standing',
    'fixed',
    'late-opening',
    'restriction',
  ]),
  source,
});

/** What a longer window or a further one costs to book; each band of notice multiplies it. */
const bookingSchema = z.strictObject({
  /** A further window, whatever its length. */
  perWindow: z._default(decimal, '0'),
  /** Each hour of a further window, and each hour by which one is made longer. */
  perHour: z._default(decimal, '0'),
  source,
});

/** What work left over costs beside the plant and labour of doing it elsewhere. */
const reBookingSchema = z.strictObject({
  /** Each unit of repeated work left over. */
  perUnit: z._default(decimal, '0'),
  /** Each further visit of a window to do it. */
  perVisit: z._default(decimal, '0'),
  source,
});

/**
 * What missing a key date costs: a sum for each day or part of a day by which the work is late, a sum once however late,
 * or both. Common practice, no source: each contract has its own sums, and none is assumed here.
 */
const keyDateSchema = z
  .strictObject({
    /** The package whose key dates these are; absent: every key date without an entry of its own. */
    package: z.optional(words),
    name: z._default(words, unnamedKeyDate),
    /** A day runs from the clock time of the key date to the same clock time of the next day. */
    perDay: z._default(decimal, '0'),
    once: z._default(decimal, '0'),
    /** A part of a day: charged as a whole one, or by its minutes. */
    partDay: z._default(z.enum(['whole', 'in proportion']), 'whole'),
    /** The most that one key date can cost. */
    cap: z.optional(decimal),
    source,
  })
  .check(
    z.refine(
      (item) => Number(item.perDay) > 0 || Number(item.once) > 0,
      'give perDay, once or both: a key date that costs nothing needs no entry',
    ),
  );

/** "More than so many hours", counted in real elapsed hours. */
const hoursSchema = {
  name: words,
  moreThanHours: z.number().check(z.minimum(0), z.maximum(20_000)),
  /** Whether hours that fall on a public holiday count. */
  publicHolidays: z._default(z.enum(['counted', 'not counted']), 'counted'),
  source,
};

const lengthSchema = z.strictObject({
  code: words,
  ...hoursSchema,
  /** Charged when the overrun, and not the booking, takes the closure past the threshold. */
  amount: z.optional(decimal),
});

const noticeSchema = z.strictObject({ ...hoursSchema, factor: decimal });

export const priceBookSchema = z
  .strictObject({
    schema: z.literal(1),
    name: words,
    /** One currency a plan: its three-letter code. */
    currency: z
      .string()
      .check(z.regex(/^[A-Z]{3}$/, 'a currency in three capital letters such as GBP')),
    /** Places of the smallest coin; every row is rounded to it once. */
    decimals: z._default(z.number().check(z.int(), z.minimum(0), z.maximum(4)), 2),
    rounding: z._default(z.enum(['half-up', 'half-even']), 'half-up'),
    /** Actual loss and delay damages are alternatives: which of them is counted. */
    basis: z._default(z.enum(['actual-loss', 'damages']), 'actual-loss'),
    delay: z.optional(delaySchema),
    standing: z.optional(standingSchema),
    fixed: z._default(z.array(fixedSchema), []),
    lateOpening: z._default(z.array(lateOpeningSchema), []),
    restriction: z.optional(restrictionSchema),
    damages: z.optional(damagesSchema),
    booking: z.optional(bookingSchema),
    reBooking: z.optional(reBookingSchema),
    keyDates: z._default(z.array(keyDateSchema), []),
    lengths: z._default(z.array(lengthSchema), []),
    /** Factors for notice given; the band with the most hours that is met holds. */
    notice: z._default(z.array(noticeSchema), []),
    /** Where the prices come from; an entry without a source of its own has this one. */
    source: words,
  })
  .check(
    z.refine((b) => b.basis !== 'damages' || b.damages !== undefined, {
      error: 'basis is damages, so damages must be given',
      path: ['damages'],
    }),
    z.refine(
      (b) =>
        b.restriction === undefined || b.restriction.rate !== undefined || b.delay?.by === 'train',
      {
        error: 'restriction needs a rate: there is no rate by train to fall back on',
        path: ['restriction', 'rate'],
      },
    ),
    z.check(({ value: book, issues }) => {
      const twice = (path: readonly (string | number)[], message: string): void =>
        void issues.push({ code: 'custom', path: [...path], message, input: book });
      const packages = book.keyDates.map((date) => date.package);
      packages.forEach((name, i) => {
        if (packages.indexOf(name) < i)
          twice(
            ['keyDates', i],
            name === undefined
              ? 'one entry at most is without a package'
              : `the key dates of "${name}" have an entry already`,
          );
      });
      const codes = (['fixed', 'lengths', 'lateOpening'] as const).flatMap((list) =>
        book[list].map(({ code }, i) => ({ code, list, i })),
      );
      for (const [at, { code, list, i }] of codes.entries()) {
        const first = codes.findIndex((item) => item.code === code);
        if (first < at)
          twice(
            [list, i, 'code'],
            `the code "${code}" is that of ${codes[first]!.list}[${codes[first]!.i}] too: each charge has a code of its own`,
          );
      }
    }),
  );

/** What an overrun is charged by. Money is decimal text in `currency`; the rates are the user's. */
export type PriceBook = z.infer<typeof priceBookSchema>;
export type HeadOfCost = (typeof headsOfCost)[number];
export type Rate = { readonly amount: string; readonly perMinutes: number };
export type DelayByTrain = Extract<NonNullable<PriceBook['delay']>, { by: 'train' }>;
export type DelayByBands = Extract<NonNullable<PriceBook['delay']>, { by: 'bands' }>;
export type StandingRule = NonNullable<PriceBook['standing']>;
export type OnSiteRule = StandingRule['onSite'][number];
export type PayFactor = StandingRule['factors'][number];
export type KeyDatePrice = PriceBook['keyDates'][number];
export type LateOpening = PriceBook['lateOpening'][number];
export type LengthThreshold = PriceBook['lengths'][number];
export type NoticeBand = PriceBook['notice'][number];

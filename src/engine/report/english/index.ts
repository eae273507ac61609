import { clockWords, dueWords } from '../../../calendar/clock-words.js';
import { durationText, minutesBetween } from '../../../calendar/index.js';
import { cautions, type Moment, type SayPhrase } from '../../../model/index.js';
import type { HeadOfCost } from '../../../model/price-book.js';
import type { SumOf } from '../../../price/english/money-words.js';
import { headTitles } from '../../../price/head-titles.js';
import { chanceText } from '../../../risk/chance-text.js';
import { placeText } from '../../plan-out/plan-changes.js';
import { planNameText } from '../../plan-out/plan-name.js';
import type { ReportWord } from './words.js';

type Told = Parameters<SayPhrase>[0];
type InWindow = { readonly window: string };
type Minutes = { readonly minutes: number };
type Stretch = { readonly start: Moment; readonly end: Moment };
/** A plan that was agreed, as it was named. `by`: who agreed it. */
type AgreedName = {
  readonly id: string;
  readonly name: string;
  readonly by: string | null;
};

const clock = ({ at, zone }: Moment): string => clockWords(at, zone);
const count = (n: number, text: string, many = `${text}s`): string =>
  `${n} ${n === 1 ? text : many}`;
/** `GBP 13,839.70`: a sum as a letter has it. Tables keep plain decimals. */
function sumText({ currency, amount }: SumOf): string {
  const [whole = '', places] = amount.split('.');
  const grouped = BigInt(whole).toLocaleString('en-GB');
  return `${currency} ${whole === '-0' ? '-0' : grouped}${places === undefined ? '' : `.${places}`}`;
}

/** English for what reports say. */
export const reportSentences = {
  'report-word': ({ word }: { readonly word: ReportWord }): string => word,
  /** `caution`: its place among those of the model. */
  caution: ({ caution }: { readonly caution: number }) => cautions[caution]!,
  moment: clock,
  'due-moment': ({ at, zone }: Moment) => dueWords(at, zone),
  'moment-in-zone': (moment: Moment) => `${clock(moment)} (${moment.zone})`,
  'from-to': ({ start, end }: Stretch) => `${clock(start)} to ${clock(end)}`,
  money: sumText,
  chance: ({ onTime }: { readonly onTime: number }) => chanceText(onTime),
  'by-clock-in': ({ zone }: { readonly zone: string }) => `by the clock in ${zone}`,
  'agreed-plan': (given: AgreedName & { readonly revision: number; readonly agreed: Moment }) =>
    `agreed plan ${given.revision}, "${given.name}", ${clock(given.agreed)}${given.by === null ? '' : `, by ${given.by}`} (${given.id})`,
  'plan-as-given': ({ id }: { readonly id: string }) => `plan ${id}, as given`,
  'plan-proposed': ({ id }: { readonly id: string }) =>
    `plan ${id}, proposed by a search and not agreed`,
  'plan-broken': ({ plan }: { readonly plan: Told }, say: SayPhrase) =>
    `${say(plan)}; some of it no longer holds in the tables as they are`,

  'overrun-title': ({ window }: InWindow) => `Cost of a late handback of ${window}`,
  'overrun-file': ({ window }: InWindow) => `overrun ${window}`,
  'handed-back-late': ({ minutes }: Minutes) => `Handed back ${durationText(minutes)} late`,
  'amounts-in': (given: { readonly currency: string; readonly rounding: string }) =>
    `amounts in ${given.currency}, each row rounded once (${given.rounding})`,
  'expected-cost': (given: {
    readonly sum: SumOf;
    readonly error: string;
    readonly shifts: number;
  }) =>
    `${sumText(given.sum)}, standard error ${given.error}: the mean over ${given.shifts} simulated shifts, those on time included`,
  'cost-percentiles': ({ sums }: { readonly sums: readonly SumOf[] }) =>
    `${sums.map(sumText).join(', ')}: 50, 80 and 95 in 100 shifts cost no more`,
  'minutes-late-in': ({ minutes, currency }: Minutes & { readonly currency: string }) =>
    `${minutes} min late, ${currency}`,
  'trains-late-at': ({ minutes }: Minutes) => `Trains late or cancelled, ${minutes} min late`,

  'account-title': ({ window }: InWindow) => `Account of the late handback of ${window}`,
  'account-file': ({ window }: InWindow) => `account ${window}`,
  'claimed-by-name': ({ name }: { readonly name: string }) => `Claimed by ${name}`,
  'head-title': ({ head }: { readonly head: HeadOfCost }) => headTitles[head],
  'options-title': ({ window }: InWindow) => `Options for ${window}`,
  'options-file': ({ window }: InWindow) => `options ${window}`,
  'simulated-shifts': ({ shifts, seed }: { readonly shifts: number; readonly seed: number }) =>
    `${shifts} shifts each, seed ${seed}, the same draws for every option`,

  'part-broken': ({ fault }: { readonly fault: Told }, say: SayPhrase) =>
    `No longer holds: ${say(fault)}`,
  'summary-file': ({ name }: { readonly name: string }) => `summary ${name}`,
  'proposal-not-agreed': ({ id }: { readonly id: string }) => planNameText({ id }, ''),
  'plan-named': (
    given: AgreedName & { readonly revision: number | null; readonly agreed: Moment | null },
  ) =>
    planNameText(
      {
        id: given.id,
        name: given.name,
        ...(given.revision !== null && { revision: given.revision }),
        ...(given.agreed && { agreedAt: given.agreed.at }),
        ...(given.by !== null && { by: given.by }),
      },
      given.agreed?.zone ?? '',
    ),
  'count-listed-below': ({ number }: { readonly number: number }) => `${number}, listed below`,
  'good-and-checked': ({ known }: { readonly known: Told }, say: SayPhrase) =>
    `${say(known)}; a separate check found no rule broken`,
  'key-dates-met': ({ met, of }: { readonly met: number; readonly of: number }) =>
    `${met} of ${count(of, 'key date')} met`,
  'activities-left-over': ({ number }: { readonly number: number }) =>
    `${count(number, 'activity', 'activities')} left over in whole or part`,
  'windows-used': ({ number }: { readonly number: number }) => `${count(number, 'window')} used`,
  'last-work-ends': (moment: Moment) => `the last work finishes ${clock(moment)}`,
  'key-dates-late': ({ names }: { readonly names: readonly string[] }) =>
    `key dates of ${names.join(', ')}`,
  'windows-not-held': (
    {
      windows,
    }: {
      readonly windows: readonly (InWindow & { readonly why: Told })[];
    },
    say: SayPhrase,
  ) => `windows ${windows.map(({ window, why }) => `${window} (${say(why)})`).join(', ')}`,
  'late-by-minutes': ({ minutes }: Minutes) => `${durationText(minutes)} late`,
  'at-least-minutes': ({ minutes }: Minutes) => `at least ${durationText(minutes)}`,
  'margin-of-required': (given: { readonly margin: number; readonly required: number }) =>
    `${durationText(given.margin)} of ${durationText(given.required)}`,
  /** `Sat 6 Mar 2027 22:50 to Sun 08:40`, with the whole date of an end that the day of the week does not name alone. */
  'booked-stretch': ({ start, end }: Stretch) => {
    const until = clock(end);
    const [day, , , , ...hour] = until.split(' ');
    const isNear = minutesBetween(start.at, end.at) < 6 * 1440;
    return `${clock(start)} to ${isNear ? [day, ...hour].join(' ') : until}`;
  },
  'changed-since': ({ plan }: { readonly plan: Told }, say: SayPhrase) =>
    `Changed since ${say(plan)}`,
  'lies-at': (given: Stretch & { readonly window: string | null; readonly units: number | null }) =>
    placeText(
      {
        window: given.window,
        from: given.start.at,
        to: given.end.at,
        ...(given.units !== null && { units: given.units }),
      },
      given.start.zone,
    ),

  'next-weeks': ({ weeks }: { readonly weeks: number }) => `Look-ahead: the next ${weeks} weeks`,
  'look-ahead-file': ({ weeks, name }: { readonly weeks: number; readonly name: string }) =>
    `look-ahead ${weeks} weeks ${name}`,
  'windows-with-work': ({ number, work }: { readonly number: number; readonly work: number }) =>
    `${number}, ${work} of them with work`,
  'count-below': ({ number }: { readonly number: number }) => `${number}, below`,
  'only-of-status': ({ window, why }: InWindow & { readonly why: Told }, say: SayPhrase) =>
    `${window} has work and is only ${say(why)}`,
  'booking-was-due': (
    given: InWindow & {
      readonly milestone: string;
      readonly due: Moment;
      readonly more: number;
    },
  ) =>
    `${given.window}: "${given.milestone}" was due ${clock(given.due)} and is not recorded as met${given.more > 0 ? `, and ${given.more} more` : ''}`,
  'nobody-rostered': ({ window, minutes }: InWindow & Minutes) =>
    `${window}: nobody is rostered for ${durationText(minutes)} of it`,
  'waits-for-unplaced': (given: {
    readonly activity: string;
    readonly start: Moment;
    readonly other: string;
  }) =>
    `${given.activity} (${clock(given.start)}) waits for ${given.other}, which is not placed in full`,
  'not-in-resources': ({ resource }: { readonly resource: string }) =>
    `${resource} is wanted and is in no table of resources: how many there are is not known`,
  'misses-key-date': (given: {
    readonly package: string;
    readonly due: Moment;
    readonly forecast: Moment | null;
  }) =>
    `${given.package} misses its key date of ${dueWords(given.due.at, given.due.zone)}: ${given.forecast === null ? 'not all of it is placed' : `forecast ${clock(given.forecast)}`}`,
};

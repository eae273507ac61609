// English for what ways to do the work cost, and at what prices two of them change places.
import { durationText } from '../../../calendar/index.js';
import type { Moment, Phrase, SayPhrase } from '../../../model/index.js';
import { sumText, type SumOf } from '../../../price/english/money-words.js';
import { clock } from './change-sentences.js';

type OfCount = { readonly count: number };
type OfWindows = { readonly windows: readonly string[] };
/** What it is a price of. */
type OfTurn = { readonly turn: Phrase };
type OfSum = { readonly sum: SumOf };
/** Of two options, what they are called. */
type Pair = { readonly cheaper: Phrase; readonly dearer: Phrase };
/** Decimal text; the share of shifts handed back late, in per cent. */
type LateShares = { readonly at: string; readonly now: string };

const small = (text: string): string => `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;

export const worthSentences = {
  'mean-of-handbacks': ({ count, change }: OfCount & { readonly change: boolean }) =>
    `mean of ${count} simulated handbacks, each priced by the minute it ends${change ? ', less the same as planned' : ''}`,
  'mean-of-shifts': ({ count, moment }: OfCount & { readonly moment: Moment }) =>
    `mean of ${count} simulated shifts, each with what it had begun by ${clock(moment)}`,
  'input-runs': () => 'runs',
  'input-seed': () => 'seed',
  'input-runs-that-cost': () => 'runs that cost something',
  'input-cut-off': () => 'cut-off',
  'input-left-on-average': () => 'left over on average',
  'input-resource-in': ({
    resource,
    window,
  }: {
    readonly resource: string;
    readonly window: string;
  }) => `${resource} in ${window}`,

  'overrun-of': ({ windows }: OfWindows) => `Overrun of ${windows.join(' and ')}`,
  'overrun-change-of': ({ windows }: OfWindows) => `Overrun of ${windows.join(', ')}: change`,
  'overrun-change-later': () => 'Overrun of later windows: change',
  'plant-planned': () => 'Planned plant and labour',
  'plant-change-of': ({ windows }: OfWindows) =>
    `Plant and labour of ${windows.join(', ')}: change`,
  'nothing-with-rate': () => 'no plant or labour with a rate',
  'none-of-it': () => 'none',
  'less-as-planned': (
    { after, before }: { readonly after: Phrase; readonly before: Phrase },
    say: SayPhrase,
  ) => `${say(after)}; less as planned: ${say(before)}`,
  'nothing-left-over': () => 'nothing is left over',
  'in-proportion': ({ from, to }: { readonly from: number; readonly to: number }) =>
    `in proportion between ${from} and ${to} left over`,

  'left-booked-again': () => 'Booking again what is left',
  'unit-booked-again': () => 'Booking the unit again',
  'second-window': () => 'The second window',
  'change-of-order': () => 'The change of order',
  'making-the-change': () => 'Making the change',
  'further-time': ({ minutes }: { readonly minutes: number }) =>
    `The further ${durationText(minutes)}`,
  'what-more-costs': ({ resource }: { readonly resource: string }) => `What ${resource} costs more`,

  'same-only-if-free': ({ turn }: OfTurn, say: SayPhrase) =>
    `It costs the same as planned only if this is free: ${small(say(turn))}.`,
  'dearer-before-paid': ({ turn, sum }: OfTurn & OfSum, say: SayPhrase) =>
    `It is dearer than as planned by ${sumText(sum)} before this is paid for: ${small(say(turn))}.`,
  'cheaper-while-less': (
    {
      turn,
      sum,
      each,
    }: OfTurn &
      OfSum & { readonly each: { readonly sum: SumOf; readonly by: 'hour' | 'unit' } | null },
    say: SayPhrase,
  ) =>
    `It is cheaper than as planned while this costs less than ${sumText(sum)}${
      each === null ? '' : ` (${sumText(each.sum)} ${each.by === 'hour' ? 'an hour' : 'a unit'})`
    }: ${small(say(turn))}.`,

  'same-on-average': ({ cheaper, dearer }: Pair, say: SayPhrase) =>
    `"${say(dearer)}" and "${say(cheaper)}" cost the same on average.`,
  'dearer-on-average': (
    { cheaper, dearer, sum, close }: Pair & OfSum & { readonly close: boolean },
    say: SayPhrase,
  ) =>
    `"${say(dearer)}" costs ${sumText(sum)} more than "${say(cheaper)}" on average${close ? ', too little to call with so many runs' : ''}.`,
  'overruns-far-dearer': ({ times }: { readonly times: number }) =>
    `Overruns would have to cost over ${times} times what the price book says for it to be the cheaper one.`,
  'cheaper-where-overruns': ({
    times,
    more,
    late,
  }: {
    /** Decimal text. */
    readonly times: string;
    /** Cheaper above so many times the price, not below. */
    readonly more: boolean;
    readonly late: LateShares | null;
  }) =>
    `It becomes the cheaper of the two where overruns cost ${more ? 'more' : 'less'} than ${times} times what the price book says${
      late === null
        ? ''
        : `, or are so many times as likely (late in ${late.at} % of shifts, not ${late.now} %)`
    }.`,
  'cheaper-of-two-while': (
    { name, turn, sum }: OfTurn & OfSum & { readonly name: Phrase },
    say: SayPhrase,
  ) =>
    `"${say(name)}" is the cheaper of the two while this costs less than ${sumText(sum)}: ${small(say(turn))}.`,
  'as-much-as-late': ({ minutes, sum }: { readonly minutes: number } & OfSum) =>
    `Apart from overruns it costs ${sumText(sum)} more; as planned, one handback ${minutes} min late costs at least that.`,
  'no-overrun-price-turns': () => 'No price of an overrun makes it the cheaper one.',
};

// What would have to be otherwise for the dearer of two options to be the cheaper.
import { joined, type Phrase, type PriceBook } from '../../model/index.js';
import type { SumOf } from '../../price/english/money-words.js';
import { decimalText, parseMoney } from '../../price/index.js';
import { sumOf } from '../../price/say-price.js';
import { sayOption } from './say-option.js';
import type { BreakEven, OptionPart, PricedOption } from './types.js';

/** An option with what of its expected total hangs on overruns and what is paid whatever happens, in smallest coins. */
interface Split {
  readonly option: PricedOption;
  readonly overrun: number;
  readonly rest: number;
}

/** What break-evens are worked out from. */
export interface BreakEvenInputs {
  /** As planned first. */
  readonly options: readonly PricedOption[];
  readonly cheapest: string;
  /** Options that cannot be told from the cheapest. */
  readonly tied: readonly string[];
  /** What one overrun of the window as planned costs, in smallest coins, at each whole minute from 0. */
  readonly costAt: readonly number[];
  readonly prices: PriceBook;
}

/**
 * Where the cheapest option and every other, and as planned and every other, change places: by what overruns cost or how
 * often they come, by the price of what the dearer one adds, by the minutes of one overrun.
 */
export function breakEvensOf(inputs: BreakEvenInputs): readonly BreakEven[] {
  const { options, cheapest, prices } = inputs;
  const all = options.map((option): Split => {
    const sum = (some: readonly OptionPart[]): number =>
      some.reduce((total, part) => total + parseMoney(part.amount, prices), 0);
    return {
      option,
      overrun: sum(option.parts.filter((part) => part.part === 'overrun')),
      rest: sum(option.parts.filter((part) => part.part !== 'overrun')),
    };
  });
  const planned = all[0]!;
  const best = all.find(({ option }) => option.id === cheapest)!;
  const others = all.filter((split) => split !== best);
  const beside = best === planned ? [] : others.filter((other) => other !== planned);
  return [
    ...others.map((other) => between(best, other, planned, inputs)),
    ...beside.map((split) =>
      totalOf(split) < totalOf(planned)
        ? between(split, planned, planned, inputs)
        : between(planned, split, planned, inputs),
    ),
  ];
}

const totalOf = ({ overrun, rest }: Split): number => overrun + rest;

function between(
  less: Split,
  more: Split,
  planned: Split,
  { costAt, prices, cheapest, tied }: BreakEvenInputs,
): BreakEven {
  const extra = more.rest - less.rest;
  const dearerBy = totalOf(more) - totalOf(less);
  // Both totals are equal where overruns cost so many times what they do: overrun x times + rest.
  const times = extra / (less.overrun - more.overrun);
  const overrunTimes = times > 0 && times !== 1 && Number.isFinite(times) ? times : null;
  // Overruns that come more often cost as much more only where a shift on time costs nothing, and one window is meant.
  const scales = [less, more].every(({ option }) => option.handbacks.length === 1) && !costAt[0];
  const late = scales ? 1 - less.option.handbacks[0]!.onTime.probability : 0;
  const lateAt = overrunTimes === null ? 0 : late * overrunTimes;
  const ownPrices = [[less, more] as const, [more, less] as const].flatMap(
    ([{ option }, other]) => {
      const own = option.breakEven;
      if (!own) return [];
      const minor = parseMoney(own.amount, prices) + totalOf(other) - totalOf(planned);
      return minor > 0
        ? [{ option: option.id, what: own.what, amount: decimalText(minor, prices) }]
        : [];
    },
  );
  const minutes =
    less === planned && extra > 0 ? costAt.findIndex((cost) => cost - costAt[0]! >= extra) : -1;
  const close =
    (less.option.id === cheapest && tied.includes(more.option.id)) ||
    (less === planned && more.option.verdict === 'too close to call') ||
    (more === planned && less.option.verdict === 'too close to call');
  const found: Omit<BreakEven, 'text'> = {
    cheaper: less.option.id,
    dearer: more.option.id,
    dearerBy: decimalText(dearerBy, prices),
    tooCloseToCall: close,
    overrunTimes,
    lateChance: late > 0 && lateAt > 0 && lateAt <= 1 ? { now: late, at: lateAt } : null,
    ownPrices,
    overrunMinutes: minutes < 0 ? null : minutes,
  };
  return { ...found, text: wordsOf(found, less.option, more.option, sumOf(extra, prices)) };
}

/** Times a price beyond which nobody asks for the figure. */
const FAR = 100;

/** The same as a commercial manager would say it. */
function wordsOf(
  found: Omit<BreakEven, 'text'>,
  less: PricedOption,
  more: PricedOption,
  /** What the dearer one costs more beside overruns. */
  extra: SumOf,
): Phrase {
  const sum = (amount: string): SumOf => ({ ...extra, amount });
  const { overrunTimes: times, lateChance, ownPrices, overrunMinutes } = found;
  const same = Number(found.dearerBy) === 0;
  const pair = { cheaper: less.name, dearer: more.name };
  const sentences = [
    same
      ? sayOption('same-on-average', pair)
      : sayOption('dearer-on-average', {
          ...pair,
          sum: sum(found.dearerBy),
          close: found.tooCloseToCall,
        }),
  ];
  if (times !== null && !same)
    sentences.push(
      times > FAR
        ? sayOption('overruns-far-dearer', { times: FAR })
        : sayOption('cheaper-where-overruns', {
            times: rounded(times, 3),
            more: times > 1,
            late: lateChance && {
              at: rounded(100 * lateChance.at, 2),
              now: rounded(100 * lateChance.now, 2),
            },
          }),
    );
  for (const { option, what, amount } of ownPrices)
    sentences.push(
      sayOption('cheaper-of-two-while', {
        name: (option === less.id ? less : more).name,
        turn: what,
        sum: sum(amount),
      }),
    );
  if (overrunMinutes !== null)
    sentences.push(sayOption('as-much-as-late', { minutes: overrunMinutes, sum: extra }));
  if (sentences.length === 1 && !same) sentences.push(sayOption('no-overrun-price-turns'));
  return joined(sentences, ' ');
}

/** Decimal text with so many digits that count, never with an exponent. */
function rounded(value: number, digits: number): string {
  const near = Number(value.toPrecision(digits));
  return near < 1e-6 ? near.toFixed(9) : String(near);
}

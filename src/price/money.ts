// Money is never a binary fraction here. A sum is kept as an exact quotient until its row is rounded, once.
import { Big } from 'big.js';
import type { Rate } from '../model/price-book.js';

export type Rounding = 'half-up' | 'half-even';

/** How the book rounds: to `decimals` places, once a row. */
export interface Coin {
  readonly currency: string;
  readonly decimals: number;
  readonly rounding: Rounding;
}

const constructors = new Map<string, typeof Big>();

/** big.js takes places and mode of a division from its constructor: one constructor a coin. */
function constructorOf(coin: Coin): typeof Big {
  const key = `${coin.decimals} ${coin.rounding}`;
  let known = constructors.get(key);
  if (!known) {
    known = Big();
    known.DP = coin.decimals;
    known.RM = coin.rounding === 'half-even' ? Big.roundHalfEven : Big.roundHalfUp;
    constructors.set(key, known);
  }
  return known;
}

/** `over / under` in whole smallest coins, rounded once by the coin's rule. O(digits). */
export function minorOf(over: Big, coin: Coin, under: Big | number = 1): number {
  const rounded = new (constructorOf(coin))(over).div(under);
  const minor = rounded.times(new Big(10).pow(coin.decimals)).toNumber();
  if (!Number.isSafeInteger(minor))
    throw new RangeError(
      `${rounded.toFixed()} ${coin.currency} is too large a sum to keep exactly`,
    );
  return minor;
}

/** Whole smallest coins as decimal text. @example decimalText(813015, coin) // '8130.15' */
export function decimalText(minor: number | bigint, coin: Pick<Coin, 'decimals'>): string {
  return new Big(String(minor)).div(new Big(10).pow(coin.decimals)).toFixed(coin.decimals);
}

/** @example moneyText(813015, coin) // 'GBP 8130.15' */
export function moneyText(minor: number | bigint, coin: Coin): string {
  return `${coin.currency} ${decimalText(minor, coin)}`;
}

/** A decimal text as an exact number. @throws {RangeError} When it is no plain decimal number. */
export function exactOf(text: string): Big {
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw new RangeError(`"${text}" is no plain decimal number`);
  return new Big(text);
}

/** The smallest coins in a decimal text, rounded by the coin's rule. @throws {RangeError} When it is no number. */
export function parseMoney(text: string, coin: Coin): number {
  return minorOf(exactOf(text), coin);
}

/** @example rateText({ amount: '71.43', perMinutes: 1 }, coin) // 'GBP 71.43 a minute' */
export function rateText(rate: Rate, coin: Coin): string {
  const per =
    rate.perMinutes === 1
      ? 'a minute'
      : rate.perMinutes === 60
        ? 'an hour'
        : `per ${rate.perMinutes} minutes`;
  return `${coin.currency} ${rate.amount} ${per}`;
}

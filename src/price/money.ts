// Money is never a binary fraction here: an amount stays an exact quotient until its row is rounded, once.
import { Big } from 'big.js';

export type Rounding = 'half-up' | 'half-even';

/** The book's rounding: to `decimals` places, once per row. */
export interface Coin {
  readonly currency: string;
  readonly decimals: number;
  readonly rounding: Rounding;
}

const constructors = new Map<string, typeof Big>();

/** big.js sets the decimal places and rounding mode of a division on its constructor, so each coin has its own. */
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

/** `over / under` in minor units (pence), rounded once by the coin's rule. O(digits). */
export function minorOf(over: Big, coin: Coin, under: Big | number = 1): number {
  const rounded = new (constructorOf(coin))(over).div(under);
  const minor = rounded.times(new Big(10).pow(coin.decimals)).toNumber();
  if (!Number.isSafeInteger(minor))
    throw new RangeError(
      `${rounded.toFixed()} ${coin.currency} is too large a sum to keep exactly`,
    );
  return minor;
}

/** Minor units (pence) as decimal text. @example decimalText(813015, coin) // '8130.15' */
export function decimalText(minor: number | bigint, coin: Pick<Coin, 'decimals'>): string {
  return new Big(String(minor)).div(new Big(10).pow(coin.decimals)).toFixed(coin.decimals);
}

/** @example moneyText(813015, coin) // 'GBP 8130.15' */
export function moneyText(minor: number | bigint, coin: Coin): string {
  return `${coin.currency} ${decimalText(minor, coin)}`;
}

/** Parses decimal text exactly. @throws {RangeError} When it is not a plain decimal number. */
export function exactOf(text: string): Big {
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw new RangeError(`"${text}" is no plain decimal number`);
  return new Big(text);
}

/** Parses decimal text to minor units (pence), rounded by the coin's rule. @throws {RangeError} When it is not a number. */
export function parseMoney(text: string, coin: Coin): number {
  return minorOf(exactOf(text), coin);
}

import { currencyFirst, decimalSign, numberText } from '../shared/format.js';

/**
 * Formats decimal text for the current language, with thousands separators and a true minus sign; no digit changes.
 *
 * @example moneyText('-1843.50') // '−1,843.50'
 */
export function moneyText(amount: string): string {
  const [whole = '', places] = amount.replace(/^-/, '').split('.');
  const sign = amount.startsWith('-') ? '\u2212' : '';
  return `${sign}${numberText(BigInt(whole))}${places === undefined ? '' : `${decimalSign()}${places}`}`;
}

/** `GBP 1,843.50`, kept on one line. */
export function sumText(amount: string, currency: string): string {
  const parts = [currency, moneyText(amount)];
  return (currencyFirst() ? parts : parts.reverse()).join('\u00a0');
}

/** Short money text for an axis: `12k`, `1.5m`. */
export function shortMoney(value: number): string {
  const [size, letter] = value >= 1e6 ? [1e6, 'm'] : value >= 1e4 ? [1e3, 'k'] : [1, ''];
  return `${numberText(Math.round((100 * value) / size) / 100)}${letter}`;
}

/**
 * The standard error of a share, in points: `\u00b10.4`. Empty when all runs agree: the share is then shown as a bound,
 * which has no error.
 */
export function errorText(error: number): string {
  if (error === 0) return '';
  return `\u00b1${error < 0.0005 ? `<\u00a0${numberText(0.1)}` : numberText(100 * error, 1)}`;
}

/** Exact signed difference of two amounts with the same decimals: `+2,800.00`. */
export function differenceText(before: string, after: string): string {
  const places = after.split('.')[1]?.length ?? 0;
  const coins = (text: string): bigint => BigInt(text.replace('.', ''));
  const difference = coins(after) - coins(before);
  const digits = String(difference < 0n ? -difference : difference).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const text = places === 0 ? whole : `${whole}.${digits.slice(-places)}`;
  return difference < 0n ? moneyText(`-${text}`) : `+${moneyText(text)}`;
}

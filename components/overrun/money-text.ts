/**
 * Decimal text with its thousands apart and a true minus sign; no digit is changed.
 *
 * @example moneyText('-1843.50') // '−1,843.50'
 */
export function moneyText(amount: string): string {
  const [whole = '', places] = amount.replace(/^-/, '').split('.');
  const first = whole.length % 3 || 3;
  const grouped = [whole.slice(0, first), ...(whole.slice(first).match(/\d{3}/g) ?? [])].join(',');
  return `${amount.startsWith('-') ? '\u2212' : ''}${grouped}${places === undefined ? '' : `.${places}`}`;
}

/** `GBP 1,843.50`, kept on one line. */
export function sumText(amount: string, currency: string): string {
  return `${currency}\u00a0${moneyText(amount)}`;
}

/** Money on an axis, where there is little room: `12k`, `1.5m`. */
export function shortMoney(value: number): string {
  const [size, letter] = value >= 1e6 ? [1e6, 'm'] : value >= 1e4 ? [1e3, 'k'] : [1, ''];
  return `${(value / size).toLocaleString('en-GB', { maximumFractionDigits: 2 })}${letter}`;
}

/** The standard error of a share, in points: `0.4`. */
export function errorText(error: number): string {
  return error > 0 && error < 0.0005 ? '<\u00a00.1' : (100 * error).toFixed(1);
}

/** A share of 1: `12.5 %`; what is neither 0 nor 1 is never written so. */
export function chanceText(share: number): string {
  if (share > 0 && share < 0.001) return '< 0.1 %';
  if (share < 1 && share > 0.999) return '> 99.9 %';
  return `${(100 * share).toFixed(share === 0 || share === 1 ? 0 : 1)} %`;
}

/** What the second sum is more than the first, exactly and with its sign: `+2,800.00`. Both have the same decimals. */
export function differenceText(before: string, after: string): string {
  const places = after.split('.')[1]?.length ?? 0;
  const coins = (text: string): bigint => BigInt(text.replace('.', ''));
  const difference = coins(after) - coins(before);
  const digits = String(difference < 0n ? -difference : difference).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const text = places === 0 ? whole : `${whole}.${digits.slice(-places)}`;
  return difference < 0n ? moneyText(`-${text}`) : `+${moneyText(text)}`;
}

import { dayFromText, dayText } from '../../../src/calendar/index.js';

const moment = /^(\d{4}-\d{2}-\d{2})(.*)$/s;
const numbers = /-?\d+(?:\.\d+)?/g;

/** A cell that begins with a date, moved on by `days`, the rest unchanged; `undefined` when it does not begin with a date. */
export function daysLater(cell: string, days: number): string | undefined {
  const [, date, rest] = moment.exec(cell) ?? [];
  const day = date === undefined ? undefined : dayFromText(date);
  return day === undefined ? undefined : `${dayText(day + days)}${rest ?? ''}`;
}

/**
 * The next `count` cells of a series, or `undefined` when the cells have no constant step: dates a fixed number of days
 * apart, or numbers (also after a name: N09, N10) a fixed step apart. A single cell is not a series, as its step is
 * unknown.
 */
export function continued(seeds: readonly string[], count: number): string[] | undefined {
  if (seeds.length < 2) return undefined;
  return laterDates(seeds, count) ?? laterNumbers(seeds, count);
}

function laterDates(seeds: readonly string[], count: number): string[] | undefined {
  const days = seeds.map((seed) => dayFromText(moment.exec(seed)?.[1] ?? ''));
  const rests = new Set(seeds.map((seed) => moment.exec(seed)?.[2]));
  const last = seeds.at(-1)!;
  if (rests.size !== 1 || days.some((day) => day === undefined)) return undefined;
  const step = evenStep(days as number[]);
  if (step === undefined) return undefined;
  return Array.from({ length: count }, (_, index) => daysLater(last, step * (index + 1))!);
}

interface Numbered {
  readonly before: string;
  readonly after: string;
  readonly units: number;
  readonly decimals: number;
  /** Digits before the decimal point, leading zeros included. */
  readonly figures: number;
  readonly padded: boolean;
}

function laterNumbers(seeds: readonly string[], count: number): string[] | undefined {
  const read = seeds.map(readNumbered);
  const first = read[0];
  if (!first) return undefined;
  const decimals = Math.max(...read.map((item) => item?.decimals ?? 0));
  const units: number[] = [];
  for (const item of read) {
    if (!item || item.before !== first.before || item.after !== first.after) return undefined;
    units.push(item.units * 10 ** (decimals - item.decimals));
  }
  const step = evenStep(units);
  if (step === undefined || !units.every(Number.isSafeInteger)) return undefined;
  const padded = read.some((item) => item!.padded);
  const figures = padded ? first.figures : 0;
  const from = units.at(-1)!;
  if (!Number.isSafeInteger(from + step * count)) return undefined;
  return Array.from({ length: count }, (_, index) => {
    const value = from + step * (index + 1);
    return `${first.before}${numberText(value, decimals, figures)}${first.after}`;
  });
}

function readNumbered(cell: string): Numbered | undefined {
  const last = [...cell.matchAll(numbers)].at(-1);
  if (!last) return undefined;
  const number = last[0];
  const before = cell.slice(0, last.index);
  const after = cell.slice(last.index + number.length);
  // After a name, a hyphen is a separator, not a sign: "N-09".
  const signed = number.startsWith('-') && before === '';
  const bare = number.replace('-', '');
  const [whole = '', part = ''] = bare.split('.');
  return {
    before: number.startsWith('-') && !signed ? `${before}-` : before,
    after,
    units: (signed ? -1 : 1) * Number(whole + part),
    decimals: part.length,
    figures: whole.length,
    padded: whole.length > 1 && whole.startsWith('0'),
  };
}

function numberText(value: number, decimals: number, figures: number): string {
  const digits = String(Math.abs(value)).padStart(Math.max(decimals + 1, figures + decimals), '0');
  const whole = digits.slice(0, digits.length - decimals);
  const part = decimals === 0 ? '' : `.${digits.slice(-decimals)}`;
  return `${value < 0 ? '-' : ''}${whole}${part}`;
}

function evenStep(values: readonly number[]): number | undefined {
  const step = values[1]! - values[0]!;
  return values.every((value, index) => index === 0 || value - values[index - 1]! === step)
    ? step
    : undefined;
}

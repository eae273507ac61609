import { dayFromText, dayText } from '../../../src/calendar/index.js';

const moment = /^(\d{4}-\d{2}-\d{2})(.*)$/s;
const numbers = /-?\d+(?:\.\d+)?/g;

/** The date a cell begins with, a day further, with whatever stands behind it; `undefined` when it is no date. */
export function daysLater(cell: string, days: number): string | undefined {
  const [, date, rest] = moment.exec(cell) ?? [];
  const day = date === undefined ? undefined : dayFromText(date);
  return day === undefined ? undefined : `${dayText(day + days)}${rest ?? ''}`;
}

/**
 * `count` cells that go on from those given, or `undefined` where no one step leads from each to the next: dates a
 * fixed number of days apart, or numbers (also behind a name: N09, N10) a fixed step apart. One cell alone is no
 * series, since nobody can tell its step.
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
  /** Figures the text holds in front of the point, zeros in front counted. */
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
  // Behind a name a hyphen parts; it is no sign: "N-09".
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

// Slips of the hand in good tables: a digit, a year, a unit, a column, a row. Each leaves a table that looks right.
import Papa from 'papaparse';
import { nextWord, randomState } from '../../../src/risk/kernel/random.js';

type Rows = string[][];

interface Random {
  /** A whole number from 0 up to but not including `count`. */
  below(count: number): number;
}

function randomOf(seed: number): Random {
  const state = randomState(seed);
  return { below: (count) => (nextWord(state) >>> 0) % count };
}

const date = /^(\d{4})-(\d\d)-(\d\d)(?: (\d\d):(\d\d))?$/;
const number = /^-?\d+(?:\.\d+)?$/;

const pick = <T>(random: Random, list: readonly T[]): T => list[random.below(list.length)]!;

/** A date as a hand gets it wrong, or writes it in another way. */
function dateSlip(text: string, random: Random): string {
  const [, year, month, day, hour, minute] = date.exec(text)!;
  const clock = hour === undefined ? '' : ` ${hour}:${minute}`;
  const of = (otherYear: number | string): string => `${otherYear}-${month}-${day}${clock}`;
  return pick(random, [
    () => of(Number(year) + 1),
    () => of(Number(year) - 1),
    () => of(Number(year) + pick(random, [10, 90, 100, 172, -10, -100])),
    () => of(year!.slice(2)),
    () => of(`${year!.slice(0, 2)}${year!.slice(3)}${year!.slice(2, 3)}`),
    () => `${year}-${day}-${month}${clock}`,
    () => `${day}/${month}/${year}${clock}`,
    () => `${Number(month)}/${Number(day)}/${year}${clock}`,
    () => `${day}.${month}.${year}${clock.replace(':', '.')}`,
    () => `${year}-${month}-${day} ${hour ?? '25'}${minute ?? ''}`,
    () => `${year}-${month}-${day} 25:61`,
    () => `${year}-${month}-31${clock}`,
    () => clock.trim(),
    () => text.replace(/\d/, (digit) => String((Number(digit) + 1) % 10)),
    () =>
      text.replace(
        /(\d)(\D*)$/,
        (_, digit: string, rest: string) => `${(Number(digit) + 1) % 10}${rest}`,
      ),
  ])();
}

/** A number with a digit too many, a comma, or a unit that is not the column's. */
function numberSlip(text: string, random: Random): string {
  return pick(random, [
    () => `${text}0`,
    () => `${text}${text}`,
    () => text.slice(0, -1),
    () => text.slice(1),
    () => `${text} h`,
    () => `${text} min`,
    () => `${text} km`,
    () => `${text}m`,
    () => `${text} d`,
    () => `${text},5`,
    () => `${text}.5`,
    () => `1.${text}`,
    () => `1,${text}`,
    () => `-${text}`,
    () => text.replaceAll('0', 'O'),
    () => text.replaceAll('1', 'l'),
    () => `${text} ?`,
    () => `${text}e3`,
    () => `${Number(text) / 60}`,
    () => `${Number(text) * 60}`,
  ])();
}

/** A word with a letter wrong, a list with another separator. */
function wordSlip(text: string, random: Random): string {
  const at = random.below(text.length + 1);
  return pick(random, [
    () => '',
    () => text.slice(0, at) + text.slice(at + 1),
    () => text.slice(0, at) + text.slice(Math.max(0, at - 1)),
    () => text.toUpperCase(),
    () => ` ${text} `,
    () => text.replaceAll(';', ','),
    () => text.replaceAll(';', ' '),
    () => text.replaceAll(':', ' '),
    () => `${text};${text}`,
    () => 'n/a',
    () => '-',
    () => '?',
  ])();
}

function cellSlip(text: string, random: Random): string {
  if (date.test(text)) return dateSlip(text, random);
  if (number.test(text)) return numberSlip(text, random);
  return wordSlip(text, random);
}

function swap(row: string[], a: number, b: number): void {
  [row[a], row[b]] = [row[b] ?? '', row[a] ?? ''];
}

/** One slip, made in the rows. The first row is the headings. */
function slipIn(rows: Rows, random: Random): void {
  const head = rows[0]!;
  const at = 1 + random.below(rows.length - 1);
  const row = rows[at]!;
  const column = random.below(head.length);
  const pair = (first: string, second: string): boolean => {
    const [a, b] = [head.indexOf(first), head.indexOf(second)];
    if (a < 0 || b < 0) return false;
    swap(row, a, b);
    return true;
  };
  const slips: (() => void)[] = [
    () =>
      rows.splice(
        at,
        0,
        row.map(() => ''),
      ),
    () => rows.splice(at, 0, [...row]),
    () => rows.splice(1 + random.below(rows.length), 0, [row[0]!, ...pick(random, rows).slice(1)]),
    () => row.splice(column, 0, ''),
    () => row.splice(column, 1),
    () => row.splice(1 + random.below(head.length)),
    () => swap(row, column, (column + 1) % head.length),
    () => void (pair('from', 'to') || pair('start', 'end')),
    () => void (pair('start', 'end') || pair('units', 'done')),
    () => swap(head, column, (column + 1) % head.length),
    () => (head[column] = `${head[column]!}s`),
    () => (head[column] = ''),
    () => {
      for (const item of rows.slice(1)) if (number.test(item[column] ?? '')) item[column] += ' h';
    },
    () => {
      for (const item of rows.slice(1))
        if (number.test(item[column] ?? '')) item[column] = item[column]!.replace('.', ',');
    },
  ];
  // Three in four are in a cell that says something.
  const filled = head.flatMap((_, place) => ((row[place] ?? '') === '' ? [] : [place]));
  if (random.below(4) > 0 && filled.length > 0) {
    const place = pick(random, filled);
    row[place] = cellSlip(row[place]!, random);
  } else pick(random, slips)();
}

/** The table with one slip or two; equal seeds give equal tables. */
export function slippedTable(text: string, seed: number): string {
  const random = randomOf(seed);
  const { data } = Papa.parse<string[]>(text.trim());
  const rows = data.map((row) => [...row]);
  slipIn(rows, random);
  if (random.below(4) === 0) slipIn(rows, random);
  return Papa.unparse(rows);
}

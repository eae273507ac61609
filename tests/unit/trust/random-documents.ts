import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import fc from 'fast-check';
import Papa from 'papaparse';
import type { Verb } from '../../../src/cli/arguments.js';
import { root } from '../../helpers/cli.js';

const blns = createRequire(import.meta.url)('big-list-of-naughty-strings/blns.json') as string[];

/** Files and further words of one command line. */
export interface Command {
  readonly verb: Verb;
  readonly files: Readonly<Record<string, string>>;
  readonly words: readonly string[];
}

const sample = (name: string): string => readFileSync(join(root, 'sample-csv', name), 'utf8');
const headingsOf = (name: string): string[] =>
  sample(name)
    .split('\n', 1)[0]!
    .split(',')
    .map((one) => one.trim());

const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

const nasty = fc.constantFrom('__proto__', 'constructor', 'toString', '', ' ', '=1+1', '\0', '"');
const plausible = fc.constantFrom(
  'A',
  'B',
  'N01',
  'A;B',
  'A + 48 h',
  '0',
  '1',
  '60',
  '-5',
  '1e9',
  '99999999999999999999',
  '50%',
  '2027-03-06 22:00',
  '2027-03-07 06:00',
  '2027-03-28 01:30',
  '2027-10-31 01:30',
  '0001-01-01',
  '9999-12-31 23:59',
  'yes',
  'no',
  'crane:1',
  'Europe/London',
  'NaN',
  'Infinity',
  '1,234.5',
);
const cell = fc.oneof(
  { weight: 6, arbitrary: plausible },
  { weight: 2, arbitrary: fc.constantFrom(...blns) },
  { weight: 1, arbitrary: nasty },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 20 }) },
);

/** A table with the headings of a sample file in any order, some left out, doubled, blank or made up. */
function wildTable(name: string): fc.Arbitrary<string> {
  const heading = fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...headingsOf(name)) },
    { weight: 1, arbitrary: nasty },
  );
  const headings = fc.oneof(
    fc.constant(headingsOf(name)),
    fc.array(heading, { minLength: 1, maxLength: 12 }),
  );
  return fc
    .tuple(headings, fc.array(fc.array(cell, { maxLength: 14 }), { maxLength: 6 }))
    .map(([head, rows]) => [head, ...rows].map((row) => row.map(quoted).join(',')).join('\n'));
}

/** The sample file with some of its cells replaced, so that most of it can be used. */
function bentTable(name: string): fc.Arbitrary<string> {
  const lines = Papa.parse<string[]>(sample(name).trim()).data;
  const change = fc.record({
    line: fc.integer({ min: 1, max: lines.length - 1 }),
    at: fc.nat({ max: 20 }),
    cell,
  });
  return fc.oneof(fc.constant([]), fc.array(change, { maxLength: 2 })).map((changes) => {
    const bent = lines.map((line) => [...line]);
    for (const one of changes) bent[one.line]![one.at % lines[0]!.length] = one.cell;
    return bent.map((line) => line.map(quoted).join(',')).join('\n');
  });
}

const table = (name: string): fc.Arbitrary<string> =>
  fc.oneof({ weight: 7, arbitrary: bentTable(name) }, { weight: 1, arbitrary: wildTable(name) });

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Every place in a JSON value, as its path. */
function places(value: Json, path: readonly string[] = []): (readonly string[])[] {
  if (value === null || typeof value !== 'object') return [path];
  return [path, ...Object.entries(value).flatMap(([key, one]) => places(one, [...path, key]))];
}

function replaced(value: Json, path: readonly string[], by: Json): Json {
  const [key, ...rest] = path;
  if (key === undefined) return by;
  const copy = structuredClone(value) as { [key: string]: Json };
  copy[key] = replaced(copy[key]!, rest, by);
  return copy;
}

/** A JSON document of the project with one or two of its values replaced, or any JSON, or any text. */
function json(text: string): fc.Arbitrary<string> {
  const whole = JSON.parse(text) as Json;
  const change = fc.tuple(
    fc.constantFrom(...places(whole)),
    fc.oneof(cell, fc.double(), fc.jsonValue()) as fc.Arbitrary<Json>,
  );
  const bent = fc
    .oneof(fc.constant([]), fc.array(change, { maxLength: 2 }))
    .map((changes) =>
      changes.reduce((value, [path, by]) => {
        try {
          return replaced(value, path, by);
        } catch {
          return value;
        }
      }, whole),
    )
    .map((value) => JSON.stringify(value));
  return fc.oneof(
    { weight: 10, arbitrary: bent },
    { weight: 1, arbitrary: fc.json() },
    { weight: 1, arbitrary: cell },
  );
}

const decisions = JSON.stringify({
  commitments: [{ activity: 'VC10', irreversible: true, reinstatementMinutes: 30 }],
  goPoints: [{ id: 'G1', window: 'N01', name: 'Begin?', holder: 'planner', before: 'VC10' }],
});
const moment = fc.constantFrom('2027-02-10 02:00', '2027-03-28 01:30', '2027-07-24 03:00');
const when = moment.map((at) => ['--at', at]);
const nothing = fc.constant<string[]>([]);
const maybe = (words: fc.Arbitrary<string[]>): fc.Arbitrary<string[]> => fc.oneof(nothing, words);

const windows = table('windows.csv');
const work = table('work.csv');
const rules = json(sample('rules/branch.json'));
const resources = table('resources.csv');
const site = json(sample('site.json'));

type FilesOf = Readonly<Record<string, fc.Arbitrary<string>>>;
const command = (
  verb: Verb,
  files: FilesOf,
  words: fc.Arbitrary<string[]> = nothing,
): fc.Arbitrary<Command> => fc.record({ verb: fc.constant(verb), files: fc.record(files), words });

/** A command line of each verb, by verb. */
export const commands: Readonly<Record<Verb, fc.Arbitrary<Command>>> = {
  usable: command('usable', { windows, rules }, maybe(cell.map((one) => [`--isolation=${one}`]))),
  fit: command('fit', { windows, work, rules, resources }),
  allocate: command('allocate', { windows, work, resources }, fc.constant(['--seconds', '1'])),
  handback: command(
    'handback',
    { windows, work, decisions: json(decisions) },
    maybe(when).map((at) => ['--seconds', '1', '--runs', '200', ...at]),
  ),
  price: command(
    'price',
    {
      windows,
      trains: table('trains.csv'),
      prices: json(sample('prices.json')),
      holidays: fc.oneof(cell, fc.constant('2027-04-02 # a holiday\n2027-04-05')),
    },
    fc
      .tuple(fc.constantFrom('N01', 'N02', '__proto__', ''), fc.integer({ min: 0, max: 2000 }))
      .map(([window, minutes]) => [
        `--window=${window}`,
        '--minutes',
        `${minutes}`,
        '--runs',
        '200',
      ]),
  ),
  book: command('book', { windows, booking: json(sample('booking.json')) }, when),
  people: command('people', { windows, roster: table('roster.csv'), site }),
  noise: command('noise', { windows, work, plant: table('plant-noise.csv'), site }, maybe(when)),
  lifting: command('lifting', {
    windows,
    work,
    forecast: table('forecast.csv'),
    temperatures: table('temperatures.csv'),
    site,
  }),
};

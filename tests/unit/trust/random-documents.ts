import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import fc from 'fast-check';
import Papa from 'papaparse';
import type { Verb } from '../../../src/cli/options.js';
import { root } from '../../helpers/cli.js';

const blns = createRequire(import.meta.url)('big-list-of-naughty-strings/blns.json') as string[];

/** Files and further words of one command line. */
export interface Command {
  readonly verb: Verb;
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly words: readonly string[];
}

const sample = (name: string): string => readFileSync(join(root, 'sample-csv', name), 'utf8');
const headingsOf = (text: string): string[] =>
  text
    .split('\n', 1)[0]!
    .split(',')
    .map((item) => item.trim());

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

/** A table with the headings of a good one in any order, some left out, doubled, blank or made up. */
function wildTable(text: string): fc.Arbitrary<string> {
  const heading = fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...headingsOf(text)) },
    { weight: 1, arbitrary: nasty },
  );
  const headings = fc.oneof(
    fc.constant(headingsOf(text)),
    fc.array(heading, { minLength: 1, maxLength: 12 }),
  );
  return fc
    .tuple(headings, fc.array(fc.array(cell, { maxLength: 14 }), { maxLength: 6 }))
    .map(([head, rows]) => [head, ...rows].map((row) => row.map(quoted).join(',')).join('\n'));
}

/** A good table with some of its cells replaced, so that most of it can be used. */
function bentTable(text: string): fc.Arbitrary<string> {
  const lines = Papa.parse<string[]>(text.trim()).data;
  const change = fc.record({
    line: fc.integer({ min: 1, max: lines.length - 1 }),
    at: fc.nat({ max: 20 }),
    cell,
  });
  return fc.oneof(fc.constant([]), fc.array(change, { maxLength: 2 })).map((changes) => {
    const bent = lines.map((line) => [...line]);
    for (const item of changes) bent[item.line]![item.at % lines[0]!.length] = item.cell;
    return bent.map((line) => line.map(quoted).join(',')).join('\n');
  });
}

const tableLike = (text: string): fc.Arbitrary<string> =>
  fc.oneof({ weight: 7, arbitrary: bentTable(text) }, { weight: 1, arbitrary: wildTable(text) });
const table = (name: string): fc.Arbitrary<string> => tableLike(sample(name));

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

type FilesOf = Readonly<Record<string, fc.Arbitrary<string | Uint8Array>>>;
const command = (
  verb: Verb,
  files: FilesOf,
  words: fc.Arbitrary<string[]> = nothing,
): fc.Arbitrary<Command> => fc.record({ verb: fc.constant(verb), files: fc.record(files), words });

/** A command line of each verb, by verb. */
export const commands: Readonly<Record<Verb, fc.Arbitrary<Command>>> = {
  usable: command('usable', { windows, rules }, maybe(cell.map((text) => [`--isolation=${text}`]))),
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
  summary: command(
    'summary',
    { windows, work, resources },
    maybe(when).map((at) => ['--seconds', '1', '--runs', '200', ...at]),
  ),
  'look-ahead': command(
    'look-ahead',
    { windows, work, resources, booking: json(sample('booking.json')) },
    when.map((at) => ['--seconds', '1', ...at]),
  ),
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

/** What was seen of the first nights of the sample, as a table. */
const seen = `activity,step,stage,started,finished,units done,units at,minutes left,least left,most left
,Take possession and place protection,lead-in,2027-02-09 23:30,2027-02-09 23:50,,,,,
,Set up worksite and brief,,2027-02-09 23:50,2027-02-10 00:05,,,,,
VC10,,,2027-02-10 00:10,,,,60,30,90
VC20,,,2027-02-10 00:20,2027-02-10 01:30,,,,,
`;

const midnight = Date.parse('2027-02-10T00:00:00Z');
const entry = (id: number, event: Json, more: { [key: string]: Json } = {}): Json => {
  const at = midnight + id * 600_000;
  return { id: `${id}`, at, enteredAt: at, by: 'planner', event, ...more };
};

/** The same night as the log of a shift. */
const shiftLog = JSON.stringify({
  schema: 1,
  window: 'N01',
  log: [
    entry(0, { kind: 'granted' }),
    entry(1, { kind: 'step-started', step: 'Take possession and place protection' }),
    entry(2, { kind: 'step-finished', step: 'Take possession and place protection' }),
    entry(3, { kind: 'activity-started', activity: 'VC10' }),
    entry(4, { kind: 'minutes-left', activity: 'VC10', low: 30, likely: 60, high: 90 }),
    entry(5, { kind: 'units-done', activity: 'VC10', units: 4 }, { corrects: '4' }),
    entry(6, { kind: 'decided', point: 'G1', name: 'Begin?', go: true }),
    entry(7, { kind: 'note', text: 'Rain' }),
    entry(8, { kind: 'handed-back' }),
  ],
});

/** Bytes of any kind, some of which begin as a workbook, a packed file, a picture or text in UTF-16 does. */
export const anyBytes: fc.Arbitrary<Uint8Array> = fc
  .tuple(
    fc.constantFrom([], [0x50, 0x4b, 3, 4], [0x1f, 0x8b], [0x89, 0x50, 0x4e, 0x47], [0xff, 0xfe]),
    fc.uint8Array({ maxLength: 400 }),
  )
  .map(([start, rest]) => Uint8Array.from([...start, ...rest]));

/** `handback` during a shift, with what was seen in a table, in a log, or in a file that is neither. */
export const duringShift: fc.Arbitrary<Command> = command(
  'handback',
  {
    windows: fc.constant(sample('windows.csv')),
    work: fc.constant(sample('work.csv')),
    rules: fc.constant(sample('rules/branch.json')),
    actuals: fc.oneof(
      { weight: 4, arbitrary: tableLike(seen) },
      { weight: 4, arbitrary: json(shiftLog) },
      { weight: 1, arbitrary: cell },
      { weight: 1, arbitrary: anyBytes },
    ),
  },
  fc
    .constantFrom('2027-02-10 02:00', '2027-02-09 23:40', '2027-02-10 07:00', '2028-01-01 00:00')
    .map((at) => ['--seconds', '0.05', '--runs', '100', '--at', at]),
);

/** The sample files that each option reads. */
export const samples: Readonly<Record<string, string>> = {
  windows: sample('windows.csv'),
  work: sample('work.csv'),
  resources: sample('resources.csv'),
  rules: sample('rules/branch.json'),
  trains: sample('trains.csv'),
  prices: sample('prices.json'),
  site: sample('site.json'),
  booking: sample('booking.json'),
  roster: sample('roster.csv'),
  forecast: sample('forecast.csv'),
  temperatures: sample('temperatures.csv'),
  plant: sample('plant-noise.csv'),
  holidays: '2027-04-02 # a holiday\n',
  decisions,
  actuals: seen,
};

/** Names of files that a person, a script or an attack might give; none leads out of its folder. */
export const fileName: fc.Arbitrary<string> = cell.filter(
  (name) => !/[/\\]/.test(name) && !/^\.*$/.test(name.trim()),
);

// Every verb, with what makes its answer longer, against the schema that the package publishes of it. Random and slipped
// files go through the same check in tests/unit/trust.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { answerSchema } from '../../../src/cli/answers/index.js';
import { verbs, type Verb } from '../../../src/cli/options.js';
import { answerFaults } from '../../helpers/answer-check.js';
import { cli, files, root } from '../../helpers/cli.js';
import { commandLine } from '../trust/command-line.js';

const { folder, words, run } = commandLine();
const sample = (name: string): string => join(root, 'sample-csv', name);
const tables = ['windows', 'work', 'resources', 'trains', 'roster', 'forecast', 'temperatures'];
const all = [
  ...tables.flatMap((table) => [`--${table}`, sample(`${table}.csv`)]),
  ...['--rules', sample('rules/electrified-two-track.json'), '--site', sample('site.json')],
];
const at = ['--at', '2027-03-06 02:00'];
const few = ['--runs', '100'];
const prices = ['--prices', sample('prices.json')];

/** Three nights and little work, so that a search is over at once. */
const small = {
  windows:
    'window,start,end,lines,isolation,status\nN1,2027-03-01 22:00,2027-03-02 06:00,Up;Down,S1,confirmed\nN2,2027-03-08 22:00,2027-03-09 06:00,Up;Down,S1,offered\nN3,2027-03-15 22:00,2027-03-16 06:00,Up;Down,,withdrawn\n',
  work: 'package,activity,title,after,minutes,minutes low,minutes high,units,minutes per unit,make safe,lines,from,to,resources,key date,made good by,speed after\nDeck,A1,Open,,90,60,150,,,,Up,100,200,gang:1,,A2,20 mph\nDeck,A2,Close,A1,60,40,120,,,,Up,100,200,gang:1,2027-03-20,,\nRail,R1,Replace,,,,,9,25,10,Down,100,900,gang:1,2027-03-12,,\nLarge,L1,Too long,,900,,,,,,Down,100,900,,,,\n',
  resources: 'resource,capacity,rate per hour\ngang,1,120\n',
};

/** Answers of the sample: a name, the verb, further words. PLAN stands for a file that `allocate --json` printed after a short search; those of `small` are few. */
type Line = readonly [name: string, verb: Verb, more: readonly string[], size?: 'small'];

const asked: readonly Line[] = [
  ['usable', 'usable', ['--loud', '--isolation', 'KV1']],
  ['fit', 'fit', []],
  ['allocate', 'allocate', [], 'small'],
  [
    'a plan mended, frozen and compared',
    'allocate',
    ['--from', 'PLAN', '--frozen-until', '2027-03-03', '--against', 'PLAN'],
    'small',
  ],
  ['a plan made to a chance', 'allocate', ['--chance', '0.95', ...few], 'small'],
  [
    'a plan made to a chance beside what is frozen',
    'allocate',
    ['--chance', '0.95', '--from', 'PLAN', '--frozen-until', '2027-03-03', ...few],
    'small',
  ],
  ['handback', 'handback', [...few, '--plan', 'PLAN']],
  ['handback during a shift', 'handback', [...few, '--plan', 'PLAN', ...at]],
  ['price', 'price', [...prices, '--window', 'N1', '--minutes', '45', ...few], 'small'],
  [
    'price with ways out',
    'price',
    [...few, '--plan', 'PLAN', '--options', ...prices, '--window', 'N1', '--minutes', '45,90'],
    'small',
  ],
  [
    'price without work',
    'price',
    [...prices, '--window', 'N3', '--minutes', '10', ...few],
    'small',
  ],
  ['book', 'book', ['--booking', sample('booking.json'), '--plan', 'PLAN', ...at]],
  ['summary', 'summary', [...few, '--plan', 'PLAN', '--against', 'PLAN', ...at]],
  ['look-ahead', 'look-ahead', ['--plan', 'PLAN', '--booking', sample('booking.json'), ...at]],
  ['people', 'people', []],
  ['noise', 'noise', ['--plant', sample('plant-noise.csv'), ...at]],
  ['lifting', 'lifting', []],
  ['lifting with a pour', 'lifting', ['--pour', 'BP40', ...at]],
];

/** The words of a line above, with a plan of work where one is named. */
async function wordsOf([, verb, more, size]: Line): Promise<string[]> {
  const tables = size
    ? Object.entries(files(small)).flatMap(([name, path]) => [`--${name}`, path])
    : all;
  const plan = join(folder, `${size ?? 'all'}.json`);
  if (more.includes('PLAN') && !existsSync(plan))
    writeFileSync(plan, (await words(['allocate', ...tables, '--seconds', '0.1', '--json'])).out);
  return [verb, ...tables, ...more.map((text) => (text === 'PLAN' ? plan : text))];
}

describe('answers and their schemas', () => {
  it('every verb is asked', () => {
    expect([...new Set(asked.map(([, verb]) => verb))].sort()).toEqual([...verbs].sort());
  });

  it.each(asked.map((line) => [line[0], line] as const))(
    '%s is as its schema says, and nothing in it is undescribed',
    async (_, line) => {
      const said = await words([...(await wordsOf(line)), '--json']);
      expect(said.told).not.toMatch(/^error/m);
      expect(answerFaults(line[1], JSON.parse(said.out))).toEqual([]);
    },
    120_000,
  );

  const some = asked.filter(([, , , size], at) => size !== undefined || at % 2 === 0);
  it.each(some.map((line) => [line[0], line] as const))(
    '%s is no wider than a screen of 60 columns, and tells times as clocks do',
    async (_, line) => {
      vi.stubEnv('COLUMNS', '60');
      const said = await words(await wordsOf(line));
      vi.unstubAllEnvs();
      const lines = said.out.split('\n');
      expect(lines.filter((text) => text.length > 60)).toEqual([]);
      expect(lines.length).toBeGreaterThan(8);
      expect(said.out).not.toMatch(/\d{4}-\d\d-\d\dT\d\d:\d\d/);
      expect(said.out.replace(/\s+/g, ' ')).toContain('! A planning aid. It is not a permit');
    },
    120_000,
  );

  it('answers beside faults keep to it too: every broken sample file that is answered', async () => {
    const broken = readdirSync(sample('broken')).filter((name) => name.endsWith('.csv'));
    let answered = 0;
    for (const name of broken) {
      const text = readFileSync(sample(`broken/${name}`), 'utf8');
      const isWork = /minutes|package/.test(text.split('\n', 1)[0]!);
      const given = isWork
        ? { windows: readFileSync(sample('windows.csv')), work: text }
        : { windows: text };
      const verb = isWork ? 'fit' : 'usable';
      const { out } = await run({ verb, files: given, words: [] });
      if (out === '') continue;
      answered += 1;
      expect(answerFaults(verb, JSON.parse(out)), name).toEqual([]);
    }
    expect(answered).toBeGreaterThan(10);
  });

  it('a schema refuses what is not such an answer', () => {
    const { notes, cautions } = { notes: [], cautions: [] };
    const bare = { needs: { isolation: [], loud: false }, windows: [], notes, cautions };
    expect(answerFaults('usable', bare)).toEqual([]);
    expect(answerFaults('usable', { ...bare, windows: [{ window: 'N01' }] })).not.toEqual([]);
    expect(answerFaults('usable', { ...bare, more: 1 })).not.toEqual([]);
    const { cautions: _, ...without } = bare;
    expect(answerFaults('usable', without)).not.toEqual([]);
  });

  it('VERB --schema prints it, and reads nothing', () => {
    const { code, stdout } = cli('usable', '--schema');
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toEqual(answerSchema('usable'));
  });

  it('lifting, people and noise keep their own cautions beside those of every answer', async () => {
    for (const [verb, about] of [
      ['lifting', /wind at the hook/],
      ['people', /not a fatigue assessment: meeting/],
      ['noise', /^Screening only/],
    ] as const) {
      const more = verb === 'noise' ? ['--plant', sample('plant-noise.csv')] : [];
      const { out } = await words([verb, ...all, ...more, '--json']);
      const { cautions } = JSON.parse(out) as { cautions: string[] };
      expect(
        cautions.some((caution) => about.test(caution)),
        verb,
      ).toBe(true);
      expect(
        cautions.some((caution) => /not a permit/.test(caution)),
        verb,
      ).toBe(true);
    }
  });
});

// What was seen of a shift (--actuals) and the calendar file that is written (--calendar), with every verb: whatever the
// file is, an answer or a stated error, and no file of the person's own written over.
import { closeSync, existsSync, ftruncateSync, mkdirSync, openSync, readFileSync } from 'node:fs';
import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { verbs, type Verb } from '../../../src/cli/options.js';
import { sizeLimits } from '../../../src/model/index.js';
import { commandLine, expectStated, longestMs } from './command-line.js';
import { anyBytes, duringShift, fileName, samples } from './random-documents.js';

const cases = Math.ceil(Number(process.env['TRUST_CASES'] ?? 60) / 3);
const seed = Number(process.env['TRUST_SEED'] ?? 7);
const { folder, words, run } = commandLine();

/** Options beside `--windows` with which each verb is complete. */
const neededBy: Readonly<Record<Verb, readonly string[]>> = {
  usable: [],
  fit: ['work'],
  allocate: ['work'],
  handback: ['work'],
  price: ['prices', 'trains'],
  book: ['booking'],
  summary: ['work'],
  'look-ahead': ['work', 'booking'],
  people: ['roster', 'site'],
  noise: ['work', 'plant', 'site'],
  lifting: ['work', 'forecast', 'temperatures', 'site'],
};
const wordsOf: { readonly [V in Verb]?: readonly string[] } = {
  allocate: ['--seconds', '0.05'],
  handback: ['--seconds', '0.05', '--runs', '100', '--at', '2027-02-10 02:00'],
  price: ['--window', 'N01', '--minutes', '30', '--runs', '100'],
  book: ['--at', '2027-02-10 02:00'],
  summary: ['--seconds', '0.05', '--runs', '100', '--at', '2027-02-10 02:00'],
  'look-ahead': ['--seconds', '0.05', '--at', '2027-02-10 02:00'],
};

/** A good command line of the verb, with some options given another path. */
function goodWords(verb: Verb, paths: Readonly<Record<string, string>> = {}): string[] {
  const options = ['windows', ...neededBy[verb]].flatMap((option) => {
    const path = join(folder, `good-${option}`);
    writeFileSync(path, samples[option]!);
    return option in paths ? [] : [`--${option}`, path];
  });
  const others = Object.entries(paths).flatMap(([option, path]) => [`--${option}=${path}`]);
  return [
    verb,
    ...options,
    ...others,
    ...(wordsOf[verb] ?? []),
    '--zone',
    'Europe/London',
    '--json',
  ];
}

describe('what was seen of a shift', () => {
  const codes = new Set<number>();

  it(
    'may be any table, log, text or bytes: an answer or a stated error',
    async () => {
      await fc.assert(
        fc.asyncProperty(duringShift, async (command) => {
          const said = await run(command);
          codes.add(said.code);
          expectStated(said);
        }),
        { numRuns: cases, seed, endOnFailure: true },
      );
      expect([...codes].sort()).toEqual([0, 1]);
    },
    cases * longestMs,
  );

  it('is refused by every verb that would pass it over', async () => {
    for (const verb of verbs.filter((text) => text !== 'handback')) {
      const said = await words(goodWords(verb, { actuals: join(folder, 'good-windows') }));
      expect(said.code).toBe(2);
      expect(said.told).toContain(`${verb} takes no --actuals; it goes with handback`);
    }
  });
});

describe('any file that is read', () => {
  const options = [...new Set([...Object.keys(samples)])];
  const verbOf = (option: string): Verb =>
    option === 'decisions' || option === 'actuals' || option === 'rules' || option === 'resources'
      ? 'handback'
      : option === 'holidays'
        ? 'price'
        : verbs.find((verb) => option === 'windows' || neededBy[verb].includes(option))!;

  it.each(options)('--%s: missing, a folder, without a name, too large', async (option) => {
    mkdirSync(join(folder, 'a folder'), { recursive: true });
    const large = join(folder, 'large');
    const file = openSync(large, 'w');
    ftruncateSync(file, sizeLimits.bytes + 1);
    closeSync(file);
    for (const [path, why] of [
      [join(folder, 'nothing here'), 'there is no such file'],
      [join(folder, 'a folder'), 'it is a folder'],
      ['', 'there is no such file'],
      [large, 'larger than 64 MB'],
      ...(existsSync('/dev/zero') ? [['/dev/zero', 'larger than 64 MB'] as const] : []),
    ] as const) {
      const said = await words(goodWords(verbOf(option), { [option]: path }));
      expectStated(said);
      expect(said.code).toBe(2);
      expect(said.told).toContain(`--${option} ${path}: `);
      expect(said.told).toContain(why);
    }
  });

  it.each(options)(
    '--%s: any bytes',
    async (option) => {
      await fc.assert(
        fc.asyncProperty(anyBytes, async (bytes) => {
          const path = join(folder, 'bytes');
          writeFileSync(path, bytes);
          expectStated(await words(goodWords(verbOf(option), { [option]: path })));
        }),
        { numRuns: Math.ceil(cases / 4), seed, endOnFailure: true },
      );
    },
    cases * longestMs,
  );

  it('of too many rows or columns is refused before they are gone through', async () => {
    const path = join(folder, 'wide.csv');
    writeFileSync(path, `window,start,end${','.repeat(3_000)}x\n`);
    const wide = await words(goodWords('usable', { windows: path }));
    expect(wide.code).toBe(1);
    expect(wide.told).toContain('Line 1 has 3003 cells; at most 2000 columns are read.');
    writeFileSync(path, `window,start,end\n${'x,\n'.repeat(sizeLimits.rows)}`);
    const long = await words(goodWords('usable', { windows: path }));
    expect(long.code).toBe(1);
    expect(long.told).toContain('The table has 250001 rows; at most 250000 are read.');
  });
});

describe('the calendar file', () => {
  const writers: readonly Verb[] = ['handback', 'book'];

  it('is refused by every verb that would not write it', async () => {
    const path = join(folder, 'never.ics');
    for (const verb of verbs.filter((text) => !writers.includes(text))) {
      const said = await words(goodWords(verb, { calendar: path }));
      expect(said.code).toBe(2);
      expect(said.told).toContain(`${verb} takes no --calendar; it goes with handback and book`);
      expect(existsSync(path)).toBe(false);
    }
  });

  it.each(writers)('%s: a place that cannot be written is told', async (verb) => {
    mkdirSync(join(folder, 'a folder'), { recursive: true });
    for (const [path, why] of [
      [join(folder, 'a folder'), 'it is a folder'],
      [join(folder, 'no folder', 'out.ics'), 'there is no such folder'],
      ['', 'there is no such folder'],
      [join(folder, 'x'.repeat(300)), 'its name is too long'],
      ...(existsSync('/dev/full') ? [['/dev/full', 'no room is left on the disk'] as const] : []),
    ] as const) {
      const said = await words(goodWords(verb, { calendar: path }));
      expectStated(said);
      expect(said.code).toBe(2);
      expect(said.told).toContain(`--calendar ${path}: `);
      expect(said.told).toContain(why);
    }
  });

  it.each(writers)('%s: never goes over a file that was read, by whatever path', async (verb) => {
    for (const option of ['windows', ...neededBy[verb]]) {
      const path = join(folder, `good-${option}`);
      const link = join(folder, `${verb} to ${option}`);
      symlinkSync(path, link);
      for (const text of [path, link, join(folder, '.', `good-${option}`)]) {
        const said = await words(goodWords(verb, { calendar: text }));
        expect(said.code).toBe(2);
        expect(said.told).toContain(`this is the file of --${option}`);
        expect(readFileSync(path, 'utf8')).toBe(samples[option]);
      }
    }
  });

  it.each(writers)(
    '%s: under any name it is a calendar, or the name is refused',
    async (verb) => {
      await fc.assert(
        fc.asyncProperty(fileName, async (name) => {
          const path = join(folder, 'names', name);
          mkdirSync(join(folder, 'names'), { recursive: true });
          const said = await words(goodWords(verb, { calendar: path }));
          expectStated(said);
          if (said.code !== 0) return;
          const [kind] = ICAL.parse(readFileSync(path, 'utf8')) as [string];
          expect(kind).toBe('vcalendar');
        }),
        { numRuns: Math.ceil(cases / 2), seed, endOnFailure: true },
      );
    },
    cases * longestMs,
  );
});

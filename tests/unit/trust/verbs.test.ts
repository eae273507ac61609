// Random documents through every verb. 60 command lines in the ordinary run; TRUST_CASES=2000 for more.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { usage, verbs, type Verb } from '../../../src/cli/arguments.js';
import { commands, type Command } from './random-documents.js';

const wanted = Number(process.env['TRUST_CASES'] ?? 60);
const eachVerb = Math.max(1, Math.ceil(wanted / verbs.length));
/** No command line of this size may take longer, the second that its search is given included. */
const longestMs = 15_000;

const folder = mkdtempSync(join(tmpdir(), 'possession-fit-verbs-'));
let main: (words: readonly string[]) => Promise<number>;
let out = '';
let told = '';
const counts = new Map<string, number>();

beforeAll(async () => {
  // The command line carries out its own words as it is loaded; `--help` is harmless.
  const words = process.argv;
  process.argv = ['node', 'cli', '--help'];
  vi.spyOn(console, 'log').mockImplementation(() => undefined);
  ({ main } = await import('../../../src/cli.js'));
  process.argv = words;
  process.exitCode = undefined;
});
afterEach(() => vi.restoreAllMocks());
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run({ verb, files, words }: Command): Promise<number> {
  out = told = '';
  vi.spyOn(console, 'error').mockImplementation((text: string) => void (told += `${text}\n`));
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += String(text);
    return true;
  });
  const options = Object.entries(files).flatMap(([option, text]) => {
    const path = join(folder, option);
    writeFileSync(path, text);
    return [`--${option}`, path];
  });
  try {
    return await main([verb, ...options, ...words, '--zone', 'Europe/London', '--json']);
  } finally {
    vi.restoreAllMocks();
  }
}

describe('random documents through the command line', () => {
  it.each(verbs)(
    '%s never crashes or hangs, and states each error',
    async (verb: Verb) => {
      await fc.assert(
        fc.asyncProperty(commands[verb], async (command) => {
          const began = performance.now();
          const code = await run(command);
          expect(performance.now() - began).toBeLessThan(longestMs);
          counts.set(`${verb} ${code}`, (counts.get(`${verb} ${code}`) ?? 0) + 1);
          if (code === 0) expect(() => JSON.parse(out) as unknown).not.toThrow();
          else {
            expect(out).toBe('');
            expect([1, 2]).toContain(code);
            expect(told).toMatch(code === 1 ? /^error: .{10}/m : /\S/);
            if (code === 2) expect(told.endsWith(`\n\n${usage}\n`)).toBe(true);
          }
        }),
        { numRuns: eachVerb, seed: Number(process.env['TRUST_SEED'] ?? 7), endOnFailure: true },
      );
    },
    eachVerb * longestMs,
  );

  it('some of each are refused and some are answered, so that both are tried', () => {
    const codes = [...counts.keys()].map((key) => key.slice(-1));
    expect(codes).toEqual(expect.arrayContaining(['0', '1']));
  });
});

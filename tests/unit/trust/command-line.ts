// The command line in this process, so that thousands of its runs take little time.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, vi } from 'vitest';
import { afterWrongUse, usualWidth } from '../../../src/cli/help.js';
import { layOut } from '../../../src/cli/print/layout.js';
import { verbs, type Verb } from '../../../src/cli/options.js';
import { answerFaults } from '../../helpers/answer-check.js';
import { processorMs } from '../../helpers/processor-clock.js';
import type { Command } from './random-documents.js';

/** Processor time that no command line of this size may exceed, the second that its search is given included. */
export const longestMs = 15_000;

export interface Said {
  /** The first of the words. */
  readonly verb: string;
  readonly code: number;
  readonly out: string;
  readonly told: string;
}

interface CommandLine {
  /** A folder of the test's own, gone after it. */
  readonly folder: string;
  /** Runs the words. What nobody foresaw is thrown; one that takes too long fails. */
  words(words: readonly string[]): Promise<Said>;
  /** Writes the files of a command, each named by its option, and runs it. */
  run(command: Command, ...more: readonly string[]): Promise<Said>;
}

/** Loads the command line once for the tests of a file. */
export function commandLine(): CommandLine {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-trust-'));
  let main: (words: readonly string[]) => Promise<number>;
  beforeAll(async () => {
    ({ main } = await import('../../../src/cli/main.js'));
  });
  afterEach(() => vi.restoreAllMocks());
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const words = async (asked: readonly string[]): Promise<Said> => {
    let [out, told] = ['', ''];
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      told += String(text);
      return true;
    });
    vi.spyOn(process.stdout, 'write').mockImplementation(((
      text: string,
      ended?: (error: null) => void,
    ) => {
      out += text;
      ended?.(null);
      return true;
    }) as typeof process.stdout.write);
    const began = processorMs();
    try {
      const code = await main(asked);
      expect(processorMs() - began).toBeLessThan(longestMs);
      return { verb: asked[0] ?? '', code, out, told };
    } finally {
      vi.restoreAllMocks();
    }
  };
  return {
    folder,
    words,
    run: async ({ verb, files, words: asked }, ...more) => {
      const options = Object.entries(files).flatMap(([option, content]) => {
        const path = join(folder, option);
        writeFileSync(path, content);
        return [`--${option}`, path];
      });
      return words([verb, ...options, ...asked, '--zone', 'Europe/London', '--json', ...more]);
    },
  };
}

/** What may stand last where the use was wrong. */
const hints = [...verbs, 'share', ''].map(
  (verb) => `\n\n${layOut(afterWrongUse([verb]), usualWidth)}\n`,
);

/** Answered in JSON as its schema says, refused with a stated error, or both: good rows are answered, the others named. */
export function expectStated({ verb, code, out, told }: Said): void {
  // Good rows are answered beside what is refused.
  if (code === 0 || (code === 1 && out !== '')) {
    const answer = JSON.parse(out) as unknown;
    if ((verbs as readonly string[]).includes(verb))
      expect(answerFaults(verb as Verb, answer)).toEqual([]);
  }
  if (code !== 0) {
    if (code === 2) expect(out).toBe('');
    expect([1, 2]).toContain(code);
    expect(told).toMatch(code === 1 ? /^error: .{10}/m : /\S/);
    if (code === 2) expect(hints.some((hint) => told.endsWith(hint))).toBe(true);
  }
}

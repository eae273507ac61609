// Random documents through every verb. 60 command lines in the ordinary run; TRUST_CASES=2000 for more.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { verbs, type Verb } from '../../../src/cli/options.js';
import { commandLine, expectStated, longestMs } from './command-line.js';
import { commands } from './random-documents.js';

const wanted = Number(process.env['TRUST_CASES'] ?? 60);
const eachVerb = Math.max(1, Math.ceil(wanted / verbs.length));
const { run } = commandLine();
const counts = new Map<string, number>();

describe('random documents through the command line', () => {
  it.each(verbs)(
    '%s never crashes or hangs, and states each error',
    async (verb: Verb) => {
      await fc.assert(
        fc.asyncProperty(commands[verb], async (command) => {
          const said = await run(command);
          counts.set(`${verb} ${said.code}`, (counts.get(`${verb} ${said.code}`) ?? 0) + 1);
          expectStated(said);
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

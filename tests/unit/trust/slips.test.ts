// Plausible slips in the sample through every verb and the import. 100 in the ordinary run; SLIP_CASES=5000 for more,
// SLIP_FROM the first seed. CASES_PART=1/2 takes each second of them.
import { describe, expect, it } from 'vitest';
import { verbs, type Verb } from '../../../src/cli/options.js';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { recompute } from '../../../src/engine/recompute.js';
import { emptyPlan } from '../../../src/model/index.js';
import { seeds } from '../../helpers/cases.js';
import { processorMs } from '../../helpers/processor-clock.js';
import { commandLine, expectStated } from './command-line.js';
import { samples } from './random-documents.js';
import { oddities, type Printed } from './oddities.js';
import { slippedTable } from './slips.js';
import { messageOf } from '../../helpers/problem-words.js';

const cases = Number(process.env['SLIP_CASES'] ?? 100);
const first = Number(process.env['SLIP_FROM'] ?? 1);
const longestMs = 10_000;
const { run } = commandLine();

const base = ['windows', 'work', 'resources', 'rules'];
/** What each verb is given; the tables among it take turns to be slipped. */
const given: Readonly<Record<Verb, { readonly files: string[]; readonly words: string[] }>> = {
  usable: { files: ['windows', 'rules'], words: [] },
  fit: { files: base, words: [] },
  allocate: { files: base, words: ['--seconds', '0.1'] },
  handback: { files: base, words: ['--seconds', '0.1', '--runs', '100'] },
  price: {
    files: [...base, 'trains', 'prices'],
    words: ['--window', 'B27', '--minutes', '45', '--seconds', '0.1', '--runs', '100'],
  },
  book: { files: ['windows', 'booking'], words: ['--at', '2026-12-01 09:00'] },
  summary: { files: base, words: ['--seconds', '0.1', '--runs', '100'] },
  'look-ahead': {
    files: [...base, 'booking'],
    words: ['--at', '2026-12-01 09:00', '--seconds', '0.1'],
  },
  people: { files: ['windows', 'roster', 'site'], words: [] },
  noise: { files: ['windows', 'work', 'plant', 'site'], words: [] },
  lifting: { files: ['windows', 'work', 'forecast', 'temperatures', 'site'], words: [] },
};
const tables = [
  'windows',
  'work',
  'resources',
  'trains',
  'roster',
  'plant',
  'forecast',
  'temperatures',
];

/** The files with one of their tables slipped. */
function slipped(names: readonly string[], seed: number): Record<string, string> {
  const own = names.filter((name) => tables.includes(name));
  const table = own[seed % own.length]!;
  return Object.fromEntries(
    names.map((name) => [
      name,
      name === table ? slippedTable(samples[name]!, seed) : samples[name]!,
    ]),
  );
}

const each = Math.max(1, Math.ceil(cases / (verbs.length + 1)));

/** Milliseconds of processor time that something takes. */
async function spentOn(act: () => Promise<void>): Promise<number> {
  const began = processorMs();
  await act();
  return processorMs() - began;
}

describe('plausible slips', () => {
  it.each(verbs)(
    '%s answers or states each in time, and nothing unlikely goes unsaid',
    async (verb) => {
      const wrong: string[] = [];
      for (const seed of seeds(each, first)) {
        const files = slipped(given[verb].files, seed);
        const told = (what: string): number => wrong.push(`seed ${seed}: ${what}`);
        try {
          const spent = await spentOn(async () => {
            const said = await run({ verb, files, words: given[verb].words });
            expectStated(said);
            if (said.out === '') return;
            const answer = JSON.parse(said.out) as Printed;
            for (const odd of oddities(answer, files, said.told)) told(odd);
          });
          if (spent > longestMs) told(`${Math.round(spent)} ms of processor time`);
        } catch (error) {
          told(String(error));
        }
      }
      expect(wrong, wrong.join('\n')).toEqual([]);
    },
    each * longestMs,
  );

  it(
    'the import keeps every cell and answers in time',
    async () => {
      const wrong: string[] = [];
      for (const seed of seeds(each, first)) {
        const files = slipped([...tables], seed);
        try {
          const spent = await spentOn(async () => {
            const list = Object.entries(files).map(([name, text]) => ({
              name: `${name}.csv`,
              bytes: new TextEncoder().encode(text),
              choices: {},
            }));
            const { document, report } = await importFiles(
              list,
              emptyPlan('Slips', 'Europe/London'),
            );
            recompute(document);
            expect(
              report.map((item) => item.faults.every((fault) => messageOf(fault) !== '')),
            ).not.toContain(false);
          });
          if (spent > longestMs) wrong.push(`seed ${seed}: ${Math.round(spent)} ms`);
        } catch (error) {
          wrong.push(`seed ${seed}: ${String(error)}`);
        }
      }
      expect(wrong, wrong.join('\n')).toEqual([]);
    },
    each * longestMs,
  );
});

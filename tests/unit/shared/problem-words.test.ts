// German words for problems against the English ones, on every broken sample and on damaged rules and prices.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { germanProblems } from '../../../components/sentences/problems/german.js';
import { englishProblems } from '../../../src/engine/english/problems.js';
import { createInlineEngine } from '../../../src/engine/index.js';
import { emptyPlan, tableKinds, wordsOf, type Problem } from '../../../src/model/index.js';
import { planFrom, type Source } from '../../../src/tables/index.js';

const folder = new URL('../../../sample-csv/', import.meta.url);
const source = (file: string): Source => ({ file, content: readFileSync(new URL(file, folder)) });

const ofTables = ['broken', 'questionable'].flatMap((where) =>
  readdirSync(new URL(`${where}/`, folder))
    .filter((name) => name.endsWith('.csv'))
    .flatMap((name) =>
      tableKinds.flatMap((kind) => {
        const given = { windows: source('windows.csv'), [kind]: source(`${where}/${name}`) };
        return planFrom(given).faults;
      }),
    ),
);

/** Each entry of a file of JSON put out of order in turn. */
async function ofJson(file: string): Promise<readonly Problem[]> {
  const text = readFileSync(new URL(file, folder), 'utf8');
  const whole = JSON.parse(text) as Record<string, unknown>;
  const damaged = Object.keys(whole).flatMap((key) =>
    [null, -5, '', [], { odd: 1 }, undefined].map((value) =>
      JSON.stringify({ ...whole, [key]: value }),
    ),
  );
  const texts = [
    ...damaged,
    text.slice(0, 90),
    text.replace('{', '{"__proto__":1,'),
    '{"a":1,"a":2}',
  ];
  const files = texts.map((each) => ({
    name: file.replace(/^.*\//, ''),
    bytes: new TextEncoder().encode(each),
  }));
  const { report } = await createInlineEngine().importFiles(files, emptyPlan('', 'Europe/London'));
  return report.flatMap((item) => item.faults);
}

const all = [
  ...ofTables,
  ...(await ofJson('prices.json')),
  ...(await ofJson('rules/electrified-two-track.json')),
  ...(await ofJson('site.json')),
];
const byKey = new Map<string, Problem[]>();
for (const problem of all) {
  const { key } = problem.sentence;
  byKey.set(key, [...(byKey.get(key) ?? []), problem]);
}

/** What was typed, with the numbers: said alike in every language. */
const marksOf = (words: readonly string[]): readonly string[] =>
  [
    ...new Set(
      [...words.join(' ').matchAll(/["„]([^"“”„]+)["“]|\d+(?:[.:]\d+)*/g)].map(
        ([found, quoted]) => quoted ?? found,
      ),
    ),
  ].sort();

describe('what is wrong with what was given', () => {
  it('has German words for whatever it has English ones for', () => {
    expect(Object.keys(germanProblems).sort()).toEqual(Object.keys(englishProblems).sort());
  });

  it('is met in many ways by the samples', () => {
    expect(byKey.size).toBeGreaterThan(95);
  });

  it.each([...byKey])('says %s in both languages, with the same names and numbers', (_, some) => {
    for (const problem of some.slice(0, 40)) {
      const english = wordsOf(problem, englishProblems);
      const german = wordsOf(problem, germanProblems);
      expect(german[0]).not.toBe(english[0]);
      expect(german.join(' ')).not.toMatch(/undefined|\[object|\b(?:the|is|are|and)\b/);
      const said = german.join(' ');
      const lost = marksOf(english).filter((mark) => !said.includes(mark));
      expect([lost, said]).toEqual([[], said]);
    }
  });
});

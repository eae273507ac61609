import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { emptyPlan, planFile } from '../../../src/model/index.js';
import { mendOf } from '../../helpers/problem-words.js';

const blank = emptyPlan('Blank', 'Europe/London');
const read = (text: string) =>
  importFiles([{ name: 'given.json', bytes: new TextEncoder().encode(text) }], blank);
const sample = (path: string): Promise<string> =>
  readFile(new URL(`../../../sample-csv/${path}`, import.meta.url), 'utf8');

describe('a JSON file taken into a plan', () => {
  it.each([
    ['rules/metro-night.json', 'rules', 'rules'],
    ['prices.json', 'prices', 'prices'],
    ['site.json', 'site', 'site'],
    ['limits/metro.json', 'site', 'site'],
  ] as const)('%s is known by what it holds', async (path, kind, part) => {
    const { document, report } = await read(await sample(path));
    expect(report[0]).toMatchObject({ kind, faults: [] });
    expect(document[part]).not.toEqual(blank[part]);
  });

  it('brings decisions of the shift', async () => {
    const { document, report } = await read('{"commitments":[],"goPoints":[]}');
    expect(report[0]).toMatchObject({ kind: 'decisions', faults: [] });
    expect(document.decisions).toEqual({ commitments: [], goPoints: [] });
  });

  it('keeps the limits on hours when those on lifting come', async () => {
    const first = await read(await sample('limits/metro.json'));
    const text = JSON.stringify({ lifting: JSON.parse(await sample('site.json')).lifting });
    const { document } = await importFiles(
      [{ name: 'lifting.json', bytes: new TextEncoder().encode(text) }],
      first.document,
    );
    expect(document.site?.hours).toEqual(first.document.site?.hours);
    expect(document.site?.lifting?.chartLimitMps).toBe(13.4);
  });

  it('opens a saved plan whole', async () => {
    const { document, report } = await read(planFile({ ...blank, name: 'Saved' }));
    expect(report[0]!.kind).toBe('plan');
    expect(document).toEqual({ ...blank, name: 'Saved' });
  });

  it.each([
    ['a plan of a newer version', '{"schema":99,"tables":{}}', 'plan'],
    ['a plan with a refused key', '{"tables":{},"__proto__":{}}', 'plan'],
    ['a price book with a word for a rate', '{"schema":1,"currency":5}', 'prices'],
    ['site limits with a word for a wind', '{"lifting":{"chartLimitMps":"much"}}', 'site'],
    ['half a file', '{"leadIn":[', 'rules'],
  ] as const)('%s changes nothing and says why', async (_, text, kind) => {
    const { document, report } = await read(text);
    expect(document).toEqual(blank);
    expect(report[0]!.kind).toBe(kind);
    expect(report[0]!.faults.length).toBeGreaterThan(0);
    expect(mendOf(report[0]!.faults[0]!)).not.toBe('');
  });
});

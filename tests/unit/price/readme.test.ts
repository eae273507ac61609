import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { priceBookSchema } from '../../../src/model/price-book.js';
import { costCurve, expectedCost } from '../../../src/price/index.js';
import { overrunCost } from '../../helpers/prices-in-english.js';
import { aResource, at, aWindow } from './builders.js';

const page = readFileSync(new URL('../../../src/price/README.md', import.meta.url), 'utf8');

/** The page's table whose first columns are headed so, a record a row. */
function table(...first: string[]): Record<string, string>[] {
  const cells = (line: string): string[] =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim());
  const lines = page.split('\n');
  const top = lines.findIndex(
    (line) => line.startsWith('|') && first.every((name, i) => cells(line)[i] === name),
  );
  const head = cells(lines[top]!);
  const rows: Record<string, string>[] = [];
  for (let i = top + 2; lines[i]?.startsWith('|'); i += 1)
    rows.push(Object.fromEntries(cells(lines[i]!).map((cell, c) => [head[c]!, cell])));
  return rows;
}

const prices = priceBookSchema.parse(JSON.parse(/```json\n([^`]*)```/.exec(page)![1]!));
const inputs = {
  window: aWindow(),
  prices,
  trains: table('train', 'due').map((row) => ({
    id: row['train']!,
    passesAt: at(`2027-05-13 ${row['due']!}`),
    weight: Number(row['weight']),
  })),
  resources: table('resource', 'number').map((row) =>
    aResource(row['resource']!, Number(row['rate per hour']), {
      availability: [{ capacity: Number(row['number']) }],
      leastHours: Number(row['least hours']),
    }),
  ),
};
const worked = table('overrun', 'weighted minutes');

describe('the worked example of the page', () => {
  it('has something to check', () => {
    expect(worked.length).toBeGreaterThan(3);
    expect([inputs.trains.length, inputs.resources.length]).toEqual([3, 2]);
  });

  it.each(worked)('comes out the same at $overrun minutes', (row) => {
    const r = overrunCost({ ...inputs, overrunMinutes: Number(row['overrun']) });
    const delay = r.rows.find((item) => item.head === 'operator-delay')!;
    const found: Record<string, string> = {
      overrun: row['overrun']!,
      'weighted minutes': delay.inputs.find((input) => input.name === 'weighted minutes')!.value,
      total: r.total,
    };
    for (const item of r.rows) found[item.code] = item.amount;
    expect(found).toEqual(row);
  });

  it('comes out the same on average', () => {
    const e = expectedCost(
      costCurve(inputs, 120),
      table('overrun', 'runs').map((row) => ({
        minutes: Number(row['overrun']),
        count: Number(row['runs']),
      })),
    );
    const found = {
      expected: e.expected,
      'standard error': e.standardError,
      p80: e.p80,
      p95: e.p95,
    };
    expect([found]).toEqual(table('expected', 'standard error'));
  });
});

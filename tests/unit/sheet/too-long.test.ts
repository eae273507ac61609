import { expect, it } from 'vitest';
import { SheetState } from '../../../components/sheet/sheet-state.js';
import { defaultStrings } from '../../../components/sheet/strings.js';

it('refuses a text longer than a plan takes, in words, and keeps what the cell held', () => {
  const told: string[] = [];
  const sheet = new SheetState(defaultStrings, (_, label) => told.push(label));
  const table = { file: 'work.csv', columns: ['title'], rows: [['Cut out']] };
  sheet.take(table);
  const cells = (text: string) => [{ cells: [{ row: 0, column: 0, text }] }];
  expect(sheet.change(cells('x'.repeat(100_001)), 'typed')).toBe(false);
  expect(sheet.table).toBe(table);
  expect(sheet.announcement).toBe(
    'Not changed: a text of 100,001 characters is longer than a cell takes (100,000)',
  );
  expect(sheet.change(cells('x'.repeat(100_000)), 'typed')).toBe(true);
  expect(told).toEqual(['typed']);
});

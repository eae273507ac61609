import {
  emptyPlan,
  ruleSetSchema,
  type PlanDocument,
  type TableText,
} from '../../src/model/index.js';
import { priceBookSchema, type PriceBook } from '../../src/model/price-book.js';
import { zone } from './clock.js';

/** A table from lines: columns first, cells apart by commas. No cell may hold a comma. */
export function tableOf(file: string, text: string): TableText {
  const [columns, ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return { file, columns: columns!, rows };
}

/** A plan of some tables; the others are empty. */
export function aDocument(
  name: string,
  tables: Partial<PlanDocument['tables']>,
  more: Partial<PlanDocument> = {},
): PlanDocument {
  const blank = emptyPlan(name, zone);
  return { ...blank, ...more, tables: { ...blank.tables, ...tables } };
}

/** Rules with one step of 20 minutes before the work, one after it, and a margin of 30. */
export const stepRules = (
  more: { leadIn?: object; leadOut?: object; margin?: object } = {},
): PlanDocument['rules'] =>
  ruleSetSchema.parse({
    schema: 1,
    name: 'Test',
    leadIn: [{ step: 'Take the line', minutes: 20, ...more.leadIn }],
    leadOut: [{ step: 'Give the line back', minutes: 20, ...more.leadOut }],
    margin: { minutes: 30, ...more.margin },
  });

/** A price book of 10 a minute from the first minute on. */
export const minuteBook: PriceBook = priceBookSchema.parse({
  schema: 1,
  name: 'Invented',
  source: 'Invented for this test',
  currency: 'GBP',
  delay: {
    by: 'bands',
    bands: [{ afterMinutes: 0, rate: '10' }],
    source: 'Invented for this test',
  },
});

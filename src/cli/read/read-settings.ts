// JSON files that only some verbs read.
import type * as z from 'zod/mini';
import { decisionsSchema, noDecisions, type Decisions } from '../../model/index.js';
import { priceBookSchema, type PriceBook } from '../../model/price-book.js';
import {
  bookingRulesSchema,
  exampleBooking,
  type BookingRules,
} from '../../rules/booking/index.js';
import { decodeBytes, jsonFrom } from '../../tables/index.js';
import type { Arguments } from '../arguments.js';
import { UsageError } from '../errors.js';
import { report } from '../print/report-faults.js';
import { printError } from '../print/screen.js';
import { fileName, readFile } from './read-sources.js';

/** @throws {BadInput} When it is not as the schema says. */
function settings<T extends z.core.$ZodType>(
  path: string,
  option: 'decisions' | 'booking' | 'prices',
  schema: T,
): z.output<T> {
  const { text } = decodeBytes(readFile(path, option));
  const { value, faults } = jsonFrom(text, fileName(path), option, schema);
  report(faults);
  return value!;
}

/** Go/no-go points and work that cannot be undone, from the given file; none without a file. */
export const decisionsFor = ({ decisions: path }: Arguments): Decisions =>
  path === undefined ? noDecisions : settings(path, 'decisions', decisionsSchema);

/** The booking rules from the given file; without a file the example, with a note that says so. */
export function bookingFor({ booking: path }: Arguments): BookingRules {
  if (path !== undefined) return settings(path, 'booking', bookingRulesSchema);
  printError(`note: no --booking FILE was given: the dates follow "${exampleBooking.name}".`);
  return exampleBooking;
}

/** The price book from the given file. */
export function pricesFor({ prices: path }: Arguments): PriceBook {
  if (path === undefined) throw new UsageError('price needs --prices FILE');
  return settings(path, 'prices', priceBookSchema);
}

import * as z from 'zod/mini';
import { dayFromText } from '../calendar/index.js';
import { agreedPlansSchema } from './agreed-schema.js';
import { bookingCountSchema } from './booking-count.js';
import { decisionsSchema } from './decisions.js';
import { priceBookSchema } from './price-book.js';
import { ruleSetSchema } from './rule-set.js';
import { siteSchema } from './site.js';

const cells = z.array(z.string());

export const tableTextSchema = z.strictObject({
  /** Name of the file it came from, for messages. */
  file: z.string(),
  columns: cells,
  rows: z.array(cells),
  /**
   * Field name to column heading, where a person chose it; the rest is matched by heading. `column 3` is the third
   * column where no heading is called so; an empty text: no column holds the field.
   */
  map: z.optional(z.record(z.string(), z.string())),
  /** Headings that a person said are to stay unread: nothing is asked of them. */
  unread: z.optional(z.array(z.string())),
  /** How `03/04/2027` is read, where a person chose it; absent: found from all dates of the table. */
  dateOrder: z.optional(z.enum(['day-first', 'month-first'])),
  /** Lines that stood above the headings, kept and written back. */
  above: z.optional(z.array(cells)),
});

/** A day of the calendar as `2027-08-30`; `2027-02-29` is none. */
export const localDateSchema = z
  .string()
  .check(z.refine((text) => dayFromText(text) !== undefined, 'a date such as 2027-08-30'));

export const planDocumentSchema = z.strictObject({
  schema: z.literal(1),
  name: z.string(),
  zone: z.string(),
  tables: z.strictObject({
    windows: tableTextSchema,
    work: tableTextSchema,
    resources: tableTextSchema,
    trains: tableTextSchema,
    roster: z.optional(tableTextSchema),
    temperatures: z.optional(tableTextSchema),
    forecast: z.optional(tableTextSchema),
    plant: z.optional(tableTextSchema),
  }),
  rules: ruleSetSchema,
  /** Limits on hours, noise, lifting and curing. */
  site: z.optional(siteSchema),
  /** Points at which somebody says whether the work goes on, and work that cannot be undone. */
  decisions: z.optional(decisionsSchema),
  prices: z.optional(priceBookSchema),
  /** Local dates of public holidays, for pay factors and for thresholds of hours; absent: none is known. */
  holidays: z.optional(z.array(localDateSchema)),
  /** How lead times of bookings are counted; absent: as the rules of booking say. */
  booking: z.optional(bookingCountSchema),
  /** The plan of work agreed on, and those before it; absent: none was. */
  agreed: z.optional(agreedPlansSchema),
});

/**
 * A table as a person typed it: every cell is kept as text, whether or not it can be read, so that saving gives
 * back what was opened. `rows[i]` may be shorter or longer than `columns`.
 */
export type TableText = z.infer<typeof tableTextSchema>;

/** The whole plan as it is saved. */
export type PlanDocument = z.infer<typeof planDocumentSchema>;

import type { Instant } from '../../calendar/index.js';
import {
  exportTable,
  exportWorkbook,
  fileStem,
  type ExportedFile,
} from '../../tables/write/export-tables.js';
import type { SayPhrase } from '../../model/index.js';
import { word } from '../report/say.js';
import { planCalendar } from './plan-calendar.js';
import { placementTable, planSheets, type PlanOut } from './plan-sheets.js';

export const planFormats = ['csv', 'xlsx', 'ics'] as const;
export type PlanFormat = (typeof planFormats)[number];

/**
 * A plan of work as a file: CSV of its placements, a workbook with all that is said of it, or a calendar.
 *
 * @param now Stamps the calendar; the others hang on the plan alone.
 * @param say Its words; the headings of placements stay English, by which they are read back.
 * @throws {RangeError} When a table is larger than a sheet.
 */
export async function planOutFile(
  out: PlanOut,
  format: PlanFormat,
  now: Instant,
  say: SayPhrase,
): Promise<ExportedFile> {
  const name = `${say(word('plan of work'))} ${out.named.name ?? out.document}`;
  if (format === 'csv') return exportTable({ ...placementTable(out, say), name }, 'csv');
  if (format === 'xlsx') return exportWorkbook(name, planSheets(out, say));
  return {
    name: `${fileStem(name)}.ics`,
    mediaType: 'text/calendar;charset=utf-8',
    bytes: new TextEncoder().encode(planCalendar(out, now, say)),
    faults: [],
  };
}

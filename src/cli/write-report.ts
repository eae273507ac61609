import { english } from '../engine/english/say.js';
import { tableOfReport } from '../engine/report/report-table.js';
import type { Report } from '../engine/report/report.js';
import type { Note } from '../model/index.js';
import { exportTable } from '../tables/write/export-tables.js';
import type { Arguments } from './arguments.js';
import { writeFileOf } from './write-file.js';

/**
 * Writes a report to the file of `--out`, as CSV or a workbook by its extension. Does nothing without `--out`.
 *
 * @param notes Assumptions of the answer; the report lists them too.
 * @throws {UsageError} When it cannot be written, or is an input file.
 */
export async function writeReport(
  asked: Arguments,
  report: Report<string>,
  notes: readonly Note[] = [],
): Promise<void> {
  if (asked.out === undefined) return;
  const said = new Set(report.lists.flatMap((list) => list.items));
  const more = notes.map((note) => note.text).filter((text) => !said.has(text));
  const lists =
    more.length === 0
      ? report.lists
      : [...report.lists, { title: 'Notes on the files', items: more }];
  const format = asked.out.toLowerCase().endsWith('.csv') ? 'csv' : 'xlsx';
  const file = await exportTable(tableOfReport({ ...report, lists }, english), format);
  writeFileOf('out', asked, file.bytes);
}

import type { PlanDocument, Problem } from '../../model/index.js';
import type { Progress } from '../types.js';
import { sourceOf } from './source.js';
import { takeTable, type Taken } from './table.js';
import type { ImportedFile, ImportReport, ImportResult } from './types.js';

const unread = (file: string, encoding: string, problem: Problem): ImportReport => ({
  file,
  kind: 'unknown',
  encoding,
  delimiter: '',
  rows: 0,
  matched: [],
  unmatched: [],
  faults: [{ ...problem, severity: 'error', file }],
});

/**
 * Reads files one after another into a document. Cells are kept as typed, faulty or not.
 *
 * @param onProgress Hears of the bytes read, file by file.
 */
export async function importFiles(
  files: readonly ImportedFile[],
  document: PlanDocument,
  onProgress?: (progress: Progress) => void,
): Promise<ImportResult> {
  const total = files.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const report: ImportReport[] = [];
  let current = document;
  let done = 0;
  for (const { name, bytes, choices } of files) {
    onProgress?.({ done, total });
    const source = await sourceOf(bytes, choices);
    done += bytes.length;
    if (source.is === 'unread') {
      report.push(unread(name, source.encoding, source.fault));
      continue;
    }
    let taken: Taken;
    if (source.is === 'text') {
      // Loaded with the first such file: most pages bring tables alone, and what checks the others is large.
      const { takeJson } = await import('./json.js');
      taken = takeJson(name, source.text, source.encoding, current);
    } else taken = await takeTable(name, source, current, choices);
    if (!choices?.leave) current = taken.document;
    report.push(taken.report);
  }
  onProgress?.({ done, total });
  return { document: current, report };
}

import { priceBookSchema } from '../model/price-book.js';
import { planDocumentSchema, type Fault, type PlanDocument } from '../model/index.js';
import { jsonFrom, rulesFrom } from '../tables/index.js';
import { sourceOf } from './import-source.js';
import { takeTable, type Taken } from './import-table.js';
import type { ImportedFile, ImportReport, ImportResult } from './import-types.js';
import type { Progress } from './types.js';

const unread = (
  file: string,
  encoding: string,
  fault: Pick<Fault, 'code' | 'message' | 'mend'>,
): ImportReport => ({
  file,
  kind: 'unknown',
  encoding,
  delimiter: '',
  rows: 0,
  matched: [],
  unmatched: [],
  faults: [{ severity: 'error', file, ...fault }],
});

function takeJson(file: string, text: string, encoding: string, document: PlanDocument): Taken {
  const report = { file, encoding, delimiter: '', rows: 0, matched: [], unmatched: [] };
  const rules = rulesFrom(text, file);
  if (rules.rules)
    return {
      document: { ...document, rules: rules.rules },
      report: { ...report, kind: 'rules', faults: rules.faults },
    };
  const prices = jsonFrom(text, file, 'prices', priceBookSchema);
  if (prices.value)
    return {
      document: { ...document, prices: prices.value },
      report: { ...report, kind: 'prices', faults: [] },
    };
  let whole: unknown;
  try {
    whole = JSON.parse(text);
  } catch {
    return { document, report: { ...report, kind: 'rules', faults: rules.faults } };
  }
  const saved = planDocumentSchema.safeParse(whole);
  if (saved.success)
    return { document: saved.data, report: { ...report, kind: 'plan', faults: [] } };
  return { document, report: { ...report, kind: 'rules', faults: rules.faults } };
}

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
    const taken =
      source.is === 'text'
        ? takeJson(name, source.text, source.encoding, current)
        : takeTable(name, source, current, choices);
    if (!choices?.leave) current = taken.document;
    report.push(taken.report);
  }
  onProgress?.({ done, total });
  return { document: current, report };
}

import { priceBookSchema } from '../model/price-book.js';
import {
  planDocumentSchema,
  type Fault,
  type PlanDocument,
  type TableKind,
} from '../model/index.js';
import {
  activitiesFrom,
  decodeBytes,
  forecastFrom,
  guessKind,
  jsonFrom,
  matchColumns,
  planFromDocument,
  plantFrom,
  readTable,
  resourcesFrom,
  rosterFrom,
  rulesFrom,
  temperaturesFrom,
  trainsFrom,
  windowsFrom,
  type Table,
} from '../tables/index.js';
import type { ImportedFile, ImportReport, ImportResult } from './types.js';

/** The faults of one table on its own, with the lines of the file. Links between tables are checked on recompute. */
function faultsOf(
  kind: TableKind,
  table: Table,
  file: string,
  document: PlanDocument,
): readonly Fault[] {
  const options = { file, zone: document.zone };
  switch (kind) {
    case 'windows':
      return windowsFrom(table, options).faults;
    case 'work':
      return activitiesFrom(table, options).faults;
    case 'resources':
      return resourcesFrom(table, options).faults;
    case 'trains':
      // A train of a named window may give only a time.
      return trainsFrom(table, { ...options, windows: planFromDocument(document).plan.windows })
        .faults;
    case 'roster':
      return rosterFrom(table, options).faults;
    case 'temperatures':
      return temperaturesFrom(table, options).faults;
    case 'forecast':
      return forecastFrom(table, options).faults;
    case 'plant':
      return plantFrom(table, options).faults;
  }
}

interface Taken {
  readonly document: PlanDocument;
  readonly report: ImportReport;
}

const unread = (
  file: string,
  encoding: string,
  fault: Omit<Fault, 'severity' | 'file'>,
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

function takeTable(file: string, text: string, encoding: string, document: PlanDocument): Taken {
  const table = readTable(text);
  const kind = guessKind(table.columns);
  if (kind === undefined) {
    const fault = {
      code: 'table-not-recognised',
      line: table.line,
      message: `The headings ${table.columns.map((one) => `"${one}"`).join(', ')} are those of no table known here.`,
      mend: 'Head the columns as sample-csv/README.md lists them: a table of windows needs window, start and end; one of work needs activity and minutes or units.',
    };
    return { document, report: unread(file, encoding, fault) };
  }
  const match = matchColumns(table.columns, kind);
  const rows = table.rows.map((row) => [...row.cells]);
  return {
    document: {
      ...document,
      tables: { ...document.tables, [kind]: { file, columns: [...table.columns], rows } },
    },
    report: {
      file,
      kind,
      encoding,
      delimiter: table.delimiter,
      rows: rows.length,
      matched: [...match.fields].map(([field, index]) => ({
        column: table.columns[index]!,
        field,
      })),
      unmatched: match.unmatched.map((index) => table.columns[index]!),
      faults: faultsOf(kind, table, file, document),
    },
  };
}

/** Reads files one after another into a document. Cells are kept as typed, faulty or not. */
export function importFiles(files: readonly ImportedFile[], document: PlanDocument): ImportResult {
  const report: ImportReport[] = [];
  let current = document;
  for (const { name, bytes } of files) {
    const { text, encoding } = decodeBytes(bytes);
    if (text.trim() === '') {
      report.push(
        unread(name, encoding, {
          code: 'file-empty',
          message: 'The file is empty.',
          mend: 'Save it again from where it came.',
        }),
      );
      continue;
    }
    const take = /^\s*[{[]/.test(text) ? takeJson : takeTable;
    const taken = take(name, text, encoding, current);
    current = taken.document;
    report.push(taken.report);
  }
  return { document: current, report };
}

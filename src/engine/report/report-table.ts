import type { SayPhrase } from '../../model/index.js';
import type { ResultTable } from '../../tables/write/export-tables.js';
import type { Report } from './report.js';
import { reportIn } from './report-in.js';
import { word } from './say.js';

/**
 * A report as a table to be saved. CSV has it whole, each row begun with the part of the report that it belongs to; a part
 * with headings of its own repeats them in its first row. A workbook has a sheet for what is said and one for each table,
 * with figures as numbers.
 */
export function tableOfReport(told: Report, say: SayPhrase): ResultTable {
  const report = reportIn(told, say);
  const [main, ...others] = report.tables;
  const [part, what, value] = [say(word('part')), say(word('what')), say(word('value'))];
  const said = saidIn(report, say(word('Caution')));
  const columns = [part, ...(main?.columns ?? [what, value])];
  const wide = Math.max(3, columns.length, ...others.map((other) => other.columns.length + 1));
  const full = (cells: readonly string[]): readonly string[] => [
    ...cells,
    ...new Array<string>(wide - cells.length).fill(''),
  ];
  const rows = [
    ...report.facts.map((fact) => [report.title, fact.label, fact.value]),
    ...(main?.rows ?? []).map((row) => [main!.title, ...row]),
    ...others.flatMap((table) => [
      [table.title, ...table.columns],
      ...table.rows.map((row) => [table.title, ...row]),
    ]),
    ...said,
  ];
  return {
    name: report.fileName,
    columns: full(columns),
    rows: rows.map(full),
    sheets: [
      {
        name: say(word('Report')),
        columns: [part, what, value],
        rows: [
          ...report.facts.map((fact) => [report.title, fact.label, fact.value]),
          ...said.map((row) => [...row, '']),
        ],
      },
      ...report.tables.map((table) => ({
        name: table.title,
        columns: table.columns,
        rows: table.rows.map((row) =>
          row.map((cell, i) => (table.figures.includes(i) ? figureOf(cell) : cell)),
        ),
      })),
    ],
  };
}

/** Lists and cautions, each text with the part it stands in. */
const saidIn = (
  report: Report<string>,
  caution: string,
): readonly (readonly [part: string, text: string])[] => [
  ...report.lists.flatMap((list) => list.items.map((item) => [list.title, item] as const)),
  ...report.cautions.map((text) => [caution, text] as const),
];

/** A figure as a number; what is none stays as it is. */
const figureOf = (cell: string): string | number =>
  /^-?\d{1,15}(\.\d{1,4})?$/.test(cell) ? Number(cell) : cell;

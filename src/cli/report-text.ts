import type { Report } from '../engine/report/report.js';
import { textTable } from './text-table.js';

/** A report as text: facts, tables, lists. The cautions come with every answer. */
export function reportText(report: Report): string {
  const wide = Math.max(...report.facts.map((one) => one.label.length));
  return [
    report.title,
    '',
    ...report.facts.map((one) => `${one.label.padEnd(wide)}  ${one.value}`),
    ...report.lists.flatMap((list) => [
      '',
      `${list.title}:`,
      ...list.items.map((one) => `  ${one}`),
    ]),
    ...report.tables.flatMap((table) => ['', table.title, textTable(table.columns, table.rows)]),
  ].join('\n');
}

import type { Report } from '../../engine/report/report.js';
import { table, type Block } from './blocks.js';

/** A report as text: facts, tables, lists. Cautions are added to every answer elsewhere. */
export function reportText(report: Report<string>): readonly Block[] {
  return [
    report.title,
    '',
    { terms: report.facts.map(({ label, value }) => [label, value] as const) },
    ...report.lists.flatMap((list) => [
      '',
      `${list.title}:`,
      ...list.items.map((item) => `  ${item}`),
    ]),
    ...report.tables.flatMap((item) => ['', item.title, table(item.columns, item.rows)]),
  ];
}

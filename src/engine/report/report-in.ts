// Beside the rest of reports, so that who shows one does not load what saves it.
import type { SayPhrase, Told } from '../../model/index.js';
import type { Report } from './report.js';

/** A report in the words of a language. */
export function reportIn(report: Report, say: SayPhrase): Report<string> {
  const each = (phrases: readonly Told[]): readonly string[] => phrases.map(say);
  return {
    title: say(report.title),
    fileName: say(report.fileName),
    facts: report.facts.map(({ label, value }) => ({ label: say(label), value: say(value) })),
    tables: report.tables.map((table) => ({
      ...table,
      title: say(table.title),
      columns: each(table.columns),
      rows: table.rows.map(each),
    })),
    lists: report.lists.map(({ title, items }) => ({ title: say(title), items: each(items) })),
    cautions: each(report.cautions),
  };
}

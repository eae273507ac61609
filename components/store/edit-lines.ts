import { isRowsChange, type Edit } from '../../src/edits/index.js';

/** One thing an edit did, to be read by a person. Rows are as typed; a part of the plan is written as JSON. */
export interface EditLine {
  /** `windows`, `rules`, `windows columns`. */
  readonly place: string;
  /** Row of the table as a person counts, 1 for the first. */
  readonly row?: number;
  readonly before?: string;
  readonly after?: string;
}

/** What an edit did, line by line, so that it can be done again by hand. */
export function editLines(edit: Edit): EditLine[] {
  return edit.changes.flatMap((change) => {
    if (!isRowsChange(change)) {
      const place = change.part.filter((key) => key !== 'tables').join(' ');
      return [{ place, ...sides(textOf(change.before), textOf(change.after)) }];
    }
    return change.splices.flatMap(({ at, removed, added }) =>
      Array.from({ length: Math.max(removed.length, added.length) }, (_one, index) => ({
        place: change.table,
        row: at + index + 1,
        ...sides(removed[index]?.join(' | '), added[index]?.join(' | ')),
      })),
    );
  });
}

function sides(
  before: string | undefined,
  after: string | undefined,
): Pick<EditLine, 'before' | 'after'> {
  return { ...(before !== undefined && { before }), ...(after !== undefined && { after }) };
}

function textOf(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  return typeof value === 'string' ? value : JSON.stringify(value);
}

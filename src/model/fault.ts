/** Something wrong, or worth saying, about what a person gave us. Never thrown: good rows load beside it. */
export interface Fault {
  /** kebab-case, stable: tests and translations hang on it, not on the message. */
  readonly code: string;
  /** `error`: the row or file was not used. `warning`: used as the message says. */
  readonly severity: 'error' | 'warning';
  readonly file: string;
  /** Line of the file, 1 for the first, counting line breaks inside quoted cells. */
  readonly line?: number;
  /** Index of the data row, 0 for the first below the header; for an element that shows the table. */
  readonly row?: number;
  /** The column as the file heads it; the place of an entry in a file of JSON, such as `delay.rate`. */
  readonly column?: string;
  /** The file is no table: what `column` names is an entry. */
  readonly entry?: true;
  /** What the cell held. */
  readonly value?: string;
  readonly message: string;
  /** How to mend it. */
  readonly mend: string;
}

/** One line a person can act on: `windows.csv, line 4, column "start": … Mend: …`. */
export function faultText(fault: Fault): string {
  const where = [
    fault.file,
    ...(fault.line === undefined ? [] : [`line ${fault.line}`]),
    ...(fault.column === undefined
      ? []
      : [`${fault.entry ? 'entry' : 'column'} "${fault.column}"`]),
  ].join(', ');
  return `${where}: ${fault.message} Mend: ${fault.mend}`;
}

import type { Fault, Problem } from '../../model/index.js';
import type { FieldOf, SheetKind } from '../headings/fields.js';
import { unreadDangers } from '../headings/fail-closed.js';
import { unitOfHeading } from '../headings/heading-units.js';
import { matchColumns, type ColumnMap, type ColumnMatch } from '../headings/match-columns.js';
import { longestCell, type Parser, problemOf } from '../parse/parsed.js';
import { faultAt, type Severity } from '../text/place.js';
import { parseMoment } from '../parse/written-moment.js';
import { exampleCells, fieldsSuggested, quotedOf } from '../headings/suggest.js';
import { isBlank, trimmed } from '../text/blank.js';
import { placesOf, type NamePlaces } from './name-places.js';
import { cellsOf, movedTo, RowCache, type ReadRow } from './row-cache.js';
import type { Table, TableRow } from '../text/table.js';

export interface SheetOptions {
  /** Name of the file, for messages. */
  readonly file: string;
  readonly map?: ColumnMap;
  /** Headings that a person said are to stay unread. */
  readonly unread?: readonly string[];
}

/** One row of a table, read field by field; what is wrong with it is collected as faults. */
export interface SheetRow<K extends SheetKind> {
  readonly index: number;
  readonly line: number;
  /** Whether the row has an error, so that nothing can be made of it. */
  isBad(): boolean;
  /** The trimmed cell; empty when blank or when there is no such column. */
  text(field: FieldOf<K>): string;
  /** The value of a cell; `undefined` when it is blank or cannot be read. */
  read<T>(field: FieldOf<K>, parse: Parser<T>): T | undefined;
  /** As `read`; a blank cell is an error. */
  require<T>(field: FieldOf<K>, parse: Parser<T>): T | undefined;
  say(severity: Severity, field: FieldOf<K> | undefined, problem: Problem): void;
}

/** A table with its columns found. */
export interface Sheet<K extends SheetKind> {
  readonly match: ColumnMatch<K>;
  /** Whether a heading may hold who is in danger and is not read: rows are looked at, and none may be used. */
  readonly refused: boolean;
  /** Everything said so far, in file order once reading is over. */
  readonly faults: Fault[];
  /** The rows that can be read; none when a needed column is missing or a column is there twice. */
  readonly rows: readonly SheetRow<K>[];
  /** The heading of a field's column as the file has it, or ours. */
  readonly headingOf: (field: FieldOf<K>) => string;
  /**
   * What `read` makes of each row of the table, its faults apart. With a memory, of a row that was read before in the
   * way `key` names, what was made of it then, where it still holds.
   */
  readonly eachRow: <T>(
    read: (row: SheetRow<K>) => T,
    memory?: Remembering<T>,
  ) => readonly ReadRow<T>[];
  /** Where the names in a column stand, among the rows that can be read. */
  readonly namesOf: (field: FieldOf<K>, memory?: RowCache<never> | RowCache<object>) => NamePlaces;
  /** The unit that a field's heading names. */
  readonly unitOf: (field: FieldOf<K>) => string | undefined;
  /** Every cell of some columns that holds something, for what a whole column settles. */
  readonly cellsOf: (names: readonly FieldOf<K>[]) => string[];
}

/** Where to look for rows read before. */
export interface Remembering<T> {
  readonly memory?: RowCache<T> | undefined;
  /** Everything beside its cells that a row is read by. */
  readonly key?: string;
  /** Whether what was made of a row would be made of it now. */
  readonly holds?: (value: T) => boolean;
}

export function openSheet<K extends SheetKind>(
  table: Table,
  kind: K,
  options: SheetOptions,
): Sheet<K> {
  const match = matchColumns(table.columns, kind, options.map);
  const faults = table.faults.map((fault) => ({ ...fault, file: options.file }));
  const headingOf = (field: FieldOf<K>): string => {
    const index = match.fields.get(field);
    return index === undefined ? field : table.columns[index]!;
  };
  const heading = table.columns.length === 0 ? [] : headingFaults(table, kind, match);
  const dangers =
    table.columns.length === 0
      ? []
      : unreadDangers(table, kind, match, options).map((danger) =>
          faultAt({ line: table.line, column: danger.heading }, 'error', danger.problem),
        );
  faults.push(...[...heading, ...dangers].map((fault) => ({ ...fault, file: options.file })));
  const unread = new Set(
    table.faults.filter((fault) => fault.severity === 'error').map((fault) => fault.row),
  );
  const readable = table.columns.length > 0 && !heading.some((fault) => fault.severity === 'error');
  const rows = readable ? table.rows : [];
  const toRead = (row: TableRow, index: number): boolean =>
    !(unread.size > 0 && unread.has(index)) && !isBlank(row.cells);
  const context: RowContext<K> = { match, headingOf, file: options.file };
  const units = new Map<FieldOf<K>, string>();
  let opened: readonly SheetRow<K>[] | undefined;
  return {
    match,
    refused: dangers.length > 0,
    faults,
    headingOf,
    get rows() {
      return (opened ??= rows.flatMap((row, index) =>
        toRead(row, index) ? [new OpenRow<K>(row, index, context, faults)] : [],
      ));
    },
    eachRow<T>(read: (row: SheetRow<K>) => T, { memory, key, holds }: Remembering<T> = {}) {
      const make = (index: number, before?: ReadRow<T>): ReadRow<T> => {
        const row = rows[index]!;
        if (before === null || (before === undefined && !toRead(row, index))) return null;
        if (before && (holds?.(before.value) ?? true)) return movedTo(before, index, row.line);
        const opened = new OpenRow<K>(row, index, context);
        const value = read(opened);
        return { value, index, line: row.line, bad: opened.isBad(), faults: opened.faults };
      };
      return memory
        ? memory.rows.of(key, cellsOf(rows), make)
        : rows.map((_, index) => make(index));
    },
    namesOf(field, memory = new RowCache<never>()) {
      const at = match.fields.get(field);
      const columns = at === undefined ? [] : [at];
      return memory.ofColumns('names', columns, { rows, key: [...unread].join() }, () =>
        placesOf(rows, (row, index) =>
          at !== undefined && toRead(row, index) ? trimmed(row.cells[at] ?? '') : '',
        ),
      );
    },
    unitOf(field) {
      let unit = units.get(field);
      if (unit === undefined) units.set(field, (unit = unitOfHeading(headingOf(field)) ?? ''));
      return unit === '' ? undefined : unit;
    },
    cellsOf: (names) =>
      names.flatMap((name) => {
        const at = match.fields.get(name);
        const texts: string[] = [];
        if (at === undefined) return texts;
        for (const { cells } of table.rows) if (cells[at]) texts.push(cells[at].slice(0, 100));
        return texts;
      }),
  };
}

interface RowContext<K extends SheetKind> {
  readonly match: ColumnMatch<K>;
  readonly headingOf: (field: FieldOf<K>) => string;
  readonly file: string;
}

const noFaults: readonly Fault[] = [];

/** A class, as tables have many rows: functions of its own for each would be as many again to sweep away. */
class OpenRow<K extends SheetKind> implements SheetRow<K> {
  readonly index: number;
  readonly line: number;
  readonly #cells: readonly string[];
  readonly #context: RowContext<K>;
  #faults: Fault[] | undefined;
  #bad = false;

  /** `faults`: takes what is said of the row; default: a list of its own. */
  constructor({ cells, line }: TableRow, index: number, context: RowContext<K>, faults?: Fault[]) {
    this.#faults = faults;
    this.index = index;
    this.line = line;
    this.#cells = cells;
    this.#context = context;
  }

  isBad(): boolean {
    return this.#bad;
  }

  get faults(): readonly Fault[] {
    return this.#faults ?? noFaults;
  }

  text(field: FieldOf<K>): string {
    const at = this.#context.match.fields.get(field);
    return at === undefined ? '' : trimmed(this.#cells[at] ?? '');
  }

  say(severity: Severity, field: FieldOf<K> | undefined, problem: Problem): void {
    this.#bad ||= severity === 'error';
    const { headingOf, file } = this.#context;
    const column = field === undefined ? {} : { column: headingOf(field) };
    const value = field === undefined ? undefined : this.text(field);
    const place = { line: this.line, row: this.index, ...column };
    (this.#faults ??= []).push({ ...faultAt(place, severity, problem, value), file });
  }

  read<T>(field: FieldOf<K>, parse: Parser<T>): T | undefined {
    const cell = this.text(field);
    return cell === '' ? undefined : this.#parsed(field, cell, parse);
  }

  require<T>(field: FieldOf<K>, parse: Parser<T>): T | undefined {
    const cell = this.text(field);
    if (cell !== '') return this.#parsed(field, cell, parse);
    this.say('error', field, blank(field));
    return undefined;
  }

  #parsed<T>(field: FieldOf<K>, cell: string, parse: Parser<T>): T | undefined {
    if (cell.length > longestCell) {
      this.say('error', field, tooLong(cell.length));
      return undefined;
    }
    const result = parse(cell);
    if ('problem' in result) {
      this.say('error', field, result.problem);
      return undefined;
    }
    if (result.warning) this.say('warning', field, result.warning);
    return result.value;
  }
}

const blank = (field: string): Problem => problemOf('cell-blank', { field });

const tooLong = (length: number): Problem => problemOf('cell-too-long', { length, longestCell });

/** The heading of "from" or "to", which are places, where it holds the dates that are missing. */
function datesAsPlaces<K extends SheetKind>(
  table: Table,
  match: ColumnMatch<K>,
  field: string,
): string | undefined {
  const place = field === 'start' ? 'from' : field === 'end' ? 'to' : undefined;
  const fields: ReadonlyMap<string, number> = match.fields;
  const at = place === undefined ? undefined : fields.get(place);
  if (at === undefined) return undefined;
  const examples = exampleCells(table.rows, at, 40);
  const dated = examples.some((cell) => {
    const read = parseMoment(cell, 'day-first');
    return !('problem' in read) && read.value.date !== undefined;
  });
  return dated ? table.columns[at]!.trim() : undefined;
}

function headingFaults<K extends SheetKind>(table: Table, kind: K, match: ColumnMatch<K>): Fault[] {
  const at = { line: table.line };
  return [
    ...match.doubled.map(({ field, columns }) => {
      const names = columns.map((index) => table.columns[index]!);
      const column = table.columns[columns[1]!]!;
      return faultAt({ ...at, column }, 'error', problemOf('column-twice', { names, field }));
    }),
    ...match.mapFaults.map(({ field, heading }) =>
      faultAt(
        { ...at, column: heading },
        'error',
        problemOf('mapped-column-missing', { heading, field }),
      ),
    ),
    ...match.missing.map((field) => {
      const suggested = match.unmatched.map((index) => ({
        index,
        fields: fieldsSuggested(table.columns[index]!, kind, exampleCells(table.rows, index, 40)),
      }));
      const maybe = (
        suggested.find(({ fields }) => fields[0] === field) ??
        suggested.find(({ fields }) => fields.includes(field))
      )?.index;
      return faultAt(
        { ...at, column: field },
        'error',
        maybe === undefined
          ? problemOf('column-missing', { kind, field, dated: datesAsPlaces(table, match, field) })
          : problemOf('column-missing/perhaps', {
              kind,
              field,
              maybe: table.columns[maybe]!.trim(),
              quoted: quotedOf(table.columns[maybe]!.trim()),
            }),
      );
    }),
  ];
}

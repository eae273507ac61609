import {
  emptyPlan,
  tableKinds,
  type Assignment,
  type Fault,
  type Plan,
  type PlanDocument,
  type PlanNote,
  type PlantNoise,
  type Site,
  type TableKind,
  type TableText,
  type Train,
  type WeatherRow,
} from '../model/index.js';
import type { ChosenColumn } from './headings/chosen-columns.js';
import type { ColumnMap } from './headings/match-columns.js';
import type { DateOrder } from './parse/written-moment.js';
import type { Table } from './text/table.js';

/** A file's content, as bytes, as text already decoded, or as a table already split. */
export interface Source {
  /** Name of the file, for messages. */
  readonly file: string;
  readonly content: string | Uint8Array | Table;
  readonly map?: ColumnMap;
  /** Headings that a person said are to stay unread. */
  readonly unread?: readonly string[];
  readonly dateOrder?: DateOrder;
}

export interface PlanSources {
  readonly windows: Source;
  readonly work?: Source;
  readonly resources?: Source;
  readonly rules?: Source & { readonly content: string | Uint8Array };
  readonly trains?: Source;
  readonly roster?: Source;
  readonly temperatures?: Source;
  readonly forecast?: Source;
  readonly plant?: Source;
  /** Limits on hours, noise, lifting and curing. */
  readonly site?: Site;
  /** The order of day and month, as a person said it of all tables. */
  readonly dateOrder?: DateOrder;
  /** What headings hold, as a person said it of all tables. */
  readonly columns?: readonly ChosenColumn[];
  /** Default: the zone of the rule set, else Europe/London. */
  readonly zone?: string;
}

export interface PlanResult {
  /** What could be used. */
  readonly plan: Plan;
  readonly trains: readonly Train[];
  readonly turns: readonly Assignment[];
  readonly temperatures: readonly WeatherRow[];
  readonly forecast: readonly WeatherRow[];
  readonly plant: readonly PlantNoise[];
  readonly site: Site;
  /** Name of the file of each table that was given, as faults name it. */
  readonly files: { readonly [K in TableKind]?: string };
  /** In the order of the files: windows, work, resources, rules, trains, roster, temperatures, forecast, plant. */
  readonly faults: readonly Fault[];
  /** By package, how many of its rows have an error and are not in the plan. */
  readonly packagesLeftOut: ReadonlyMap<string, number>;
  /** What it rests on that nobody said, with counts and the cells. */
  readonly notes: readonly PlanNote[];
  /** The tables as a plan document holds them, where they were read from files. */
  readonly tables?: PlanDocument['tables'];
}

/** A table of a plan with all that says how it is read. */
export interface Given {
  readonly table: Table;
  readonly file: string;
  readonly map?: ColumnMap;
  /** Headings that a person said are to stay unread. */
  readonly unread?: readonly string[];
  readonly dateOrder?: DateOrder;
}

/** The tables of one plan. */
export interface Tables {
  readonly windows: Given;
  readonly work?: Given;
  readonly resources?: Given;
  readonly trains?: Given;
  readonly roster?: Given;
  readonly temperatures?: Given;
  readonly forecast?: Given;
  readonly plant?: Given;
}

/** The tables as a plan document holds them: every cell, and how a person said that they are read. */
export function textsOf(tables: Tables): PlanDocument['tables'] {
  const texts = tableKinds.flatMap((kind) => {
    const given = tables[kind];
    if (!given) return [];
    const { table, file, map, unread, dateOrder } = given;
    const text: TableText = {
      file,
      columns: [...table.columns],
      rows: table.rows.map((row) => [...row.cells]),
      ...(map && { map: { ...map } }),
      ...(unread && { unread: [...unread] }),
      ...(dateOrder && { dateOrder }),
    };
    return [[kind, text] as const];
  });
  return { ...emptyPlan('', 'UTC').tables, ...Object.fromEntries(texts) };
}

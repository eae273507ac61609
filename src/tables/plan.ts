import { isZone } from '../calendar/index.js';
import {
  noRules,
  type Fault,
  type Plan,
  type PlanDocument,
  type RuleSet,
  type TableText,
  type Train,
} from '../model/index.js';
import { activitiesFrom } from './activities.js';
import { decodeBytes } from './decode.js';
import type { FieldOf } from './fields.js';
import { checkLinks, type SayOfActivity } from './links.js';
import { matchColumns, type ColumnMap } from './match-columns.js';
import type { DateOrder } from './parse/written-moment.js';
import { faultAt } from './place.js';
import { readTable } from './read-table.js';
import { resourcesFrom } from './resources.js';
import { rulesFrom } from './rules.js';
import { tableOf, type Table } from './table.js';
import { trainsFrom } from './trains.js';
import { windowsFrom } from './windows.js';

/** A file's content, as bytes or as text already decoded. */
export interface Source {
  /** Name of the file, for messages. */
  readonly file: string;
  readonly content: string | Uint8Array;
  readonly map?: ColumnMap;
  readonly dateOrder?: DateOrder;
}

export interface PlanSources {
  readonly windows: Source;
  readonly work?: Source;
  readonly resources?: Source;
  readonly rules?: Source;
  readonly trains?: Source;
  /** Default: the zone of the rule set, else Europe/London. */
  readonly zone?: string;
}

export interface PlanResult {
  /** What could be used. */
  readonly plan: Plan;
  readonly trains: readonly Train[];
  /** In the order of the files: windows, work, resources, rules, trains. */
  readonly faults: readonly Fault[];
}

interface Given {
  readonly table: Table;
  readonly file: string;
  readonly map?: ColumnMap;
  readonly dateOrder?: DateOrder;
}

interface Tables {
  readonly windows: Given;
  readonly work?: Given;
  readonly resources?: Given;
  readonly trains?: Given;
}

/**
 * Reads a whole plan from files and checks each against the others. Without rules nothing is deducted.
 *
 * @throws {RangeError} When `zone` is not a time zone.
 */
export function planFrom(sources: PlanSources): PlanResult {
  const rules = sources.rules
    ? rulesFrom(textOf(sources.rules), sources.rules.file)
    : { rules: noRules, faults: [] };
  const given = (source: Source | undefined): Given | undefined =>
    source && { ...source, table: readTable(textOf(source)) };
  const [work, resources, trains] = [
    given(sources.work),
    given(sources.resources),
    given(sources.trains),
  ];
  const tables: Tables = {
    windows: given(sources.windows)!,
    ...(work && { work }),
    ...(resources && { resources }),
    ...(trains && { trains }),
  };
  return assemble(tables, sources.zone, rules.rules ?? noRules, rules.faults);
}

/** Reads the tables of a plan document. A table without headings is one that nobody gave. */
export function planFromDocument(document: PlanDocument): PlanResult {
  const given = (text: TableText): Given | undefined =>
    text.columns.length === 0
      ? undefined
      : { table: tableOf(text), file: text.file, ...(text.map && { map: text.map }) };
  const { windows, work, resources, trains } = document.tables;
  const [workTable, resourceTable, trainTable] = [given(work), given(resources), given(trains)];
  const tables: Tables = {
    windows: given(windows) ?? { table: tableOf(windows), file: windows.file },
    ...(workTable && { work: workTable }),
    ...(resourceTable && { resources: resourceTable }),
    ...(trainTable && { trains: trainTable }),
  };
  return assemble(tables, document.zone, document.rules, []);
}

function assemble(
  tables: Tables,
  chosen: string | undefined,
  rules: RuleSet,
  ruleFaults: readonly Fault[],
): PlanResult {
  const zone = chosen ?? rules.zone ?? 'Europe/London';
  if (!isZone(zone)) throw new RangeError(`unknown time zone "${zone}"`);
  const {
    windows,
    faults: windowFaults,
    rowOf: windowRows,
  } = windowsFrom(tables.windows.table, { ...tables.windows, zone });
  const work = tables.work && activitiesFrom(tables.work.table, { ...tables.work, zone });
  const resources =
    tables.resources && resourcesFrom(tables.resources.table, { ...tables.resources, zone });
  const trains =
    tables.trains && trainsFrom(tables.trains.table, { ...tables.trains, zone, windows });
  const linked =
    tables.work && work
      ? checkLinks(work.activities, {
          windows,
          windowRows,
          activityRows: work.rowOf,
          ...(resources && { resources: resources.resources }),
          say: sayOfWork(tables.work, work.rowOf),
        })
      : { activities: [], faults: [] };
  return {
    plan: {
      zone,
      windows,
      activities: linked.activities,
      resources: resources?.resources ?? [],
      rules,
    },
    trains: trains?.trains ?? [],
    faults: [
      ...windowFaults,
      ...[...(work?.faults ?? []), ...linked.faults].sort(byLine),
      ...(resources?.faults ?? []),
      ...ruleFaults,
      ...[...(trains?.faults ?? []), ...trainWindowFaults(tables.trains, windowRows)].sort(byLine),
    ],
  };
}

const byLine = (a: Fault, b: Fault): number => (a.line ?? 0) - (b.line ?? 0);

function textOf(source: Source): string {
  return typeof source.content === 'string' ? source.content : decodeBytes(source.content).text;
}

function sayOfWork(given: Given, rowOf: ReadonlyMap<string, number>): SayOfActivity {
  const { table, file, map } = given;
  const { fields } = matchColumns(table.columns, 'work', map);
  return (id, field, severity, problem) => {
    const row = rowOf.get(id)!;
    const at = fields.get(field);
    const { cells, line } = table.rows[row]!;
    const column = at === undefined ? field : table.columns[at]!;
    return {
      ...faultAt(
        { line, row, column },
        severity,
        problem,
        at === undefined ? '' : cells[at]?.trim(),
      ),
      file,
    };
  };
}

/** Trains that name a window there is no row of. They are kept, and count after no window. */
function trainWindowFaults(
  given: Given | undefined,
  windowRows: ReadonlyMap<string, number>,
): Fault[] {
  if (!given) return [];
  const field: FieldOf<'trains'> = 'window';
  const at = matchColumns(given.table.columns, 'trains', given.map).fields.get(field);
  if (at === undefined) return [];
  return given.table.rows.flatMap(({ cells, line }, row) => {
    const name = cells[at]?.trim() ?? '';
    if (name === '' || windowRows.has(name)) return [];
    const place = { line, row, column: given.table.columns[at]! };
    const problem = {
      code: 'window-not-known',
      message: `There is no window "${name}", so this train counts after none.`,
      mend: 'Name a window of the file, or leave the cell blank.',
    };
    return [{ ...faultAt(place, 'warning', problem, name), file: given.file }];
  });
}

import { isZone } from '../calendar/index.js';
import {
  tableIn,
  tableKinds,
  type AccessWindow,
  type Fault,
  type Plan,
  type PlanDocument,
  type RuleSet,
  type Site,
  type TableKind,
  type TableText,
} from '../model/index.js';
import { activitiesFrom } from './kinds/activities.js';
import { assumptionsOf, type TableRead } from './assumptions.js';
import {
  byLine,
  linkFaults,
  oddFaults,
  sayOfWork,
  trainWindowFaults,
} from './links/cross-faults.js';
import { dateOrders, orderSigns } from './dates/date-orders.js';
import { dateColumns } from './dates/date-finding.js';
import { farDateFaults, yearsOf } from './dates/far-dates.js';
import type { DateOrder } from './parse/written-moment.js';
import { PlanCache } from './plan-cache.js';
import type { Given, PlanResult, Tables } from './plan-sources.js';
import { oddWindows } from './links/plausible.js';
import type { OtherReaders } from './other-readers.js';
import { leftOutNotes, packagesLeftOut, type LeftOut } from './rows-left-out.js';
import type { Table } from './text/table.js';
import { windowsFrom } from './kinds/windows.js';

/**
 * Reads the tables of a plan document. A table without headings is one that nobody gave.
 *
 * @param readers Of the tables beside windows and work; a document that has none needs none.
 * @param memory Of documents read before, which share with this one what is equal.
 */
export function planWith(
  readers: OtherReaders | undefined,
  document: PlanDocument,
  memory: PlanCache = new PlanCache(),
): PlanResult {
  const given = (kind: TableKind, text: TableText): Given | undefined =>
    text.columns.length === 0
      ? undefined
      : {
          table: memory.table(kind, text),
          file: text.file,
          ...(text.map && { map: text.map }),
          ...(text.unread && { unread: text.unread }),
          ...(text.dateOrder && { dateOrder: text.dateOrder }),
        };
  const { windows, work } = document.tables;
  memory.goOnFrom(work);
  const tables: Tables = {
    windows: given('windows', windows) ?? {
      table: memory.table('windows', windows),
      file: windows.file,
    },
    ...optionalTables((kind) => given(kind, tableIn(document, kind))),
  };
  return assemble(readers, tables, document.zone, document.rules, [], document.site, memory);
}

/** Every table but the windows that is given. */
export function optionalTables(
  give: (kind: Exclude<TableKind, 'windows'>) => Given | undefined,
): Omit<Tables, 'windows'> {
  return Object.fromEntries(
    tableKinds.flatMap((kind) => {
      const table = kind === 'windows' ? undefined : give(kind);
      return table ? [[kind, table]] : [];
    }),
  );
}

/**
 * A plan out of its tables, each checked against the others.
 *
 * @throws {RangeError} When `chosen` is not a time zone.
 */
export function assemble(
  readers: OtherReaders | undefined,
  given: Tables,
  chosen: string | undefined,
  rules: RuleSet,
  ruleFaults: readonly Fault[],
  site: Site = noSite,
  memory = new PlanCache(),
): PlanResult {
  const zone = chosen ?? rules.zone ?? 'Europe/London';
  if (!isZone(zone)) throw new RangeError(`unknown time zone "${zone}"`);
  const { orders, faults: orderFaults } = dateOrders(given, (table, kind) =>
    memory.of(`dates ${kind}`, datesOf(kind, table, memory), () => orderSigns(table, kind)),
  );
  const tables = withOrders(given, orders);
  const found = memory.of('windows', cacheKeyOf(tables.windows, zone), () =>
    windowsFrom(tables.windows.table, { ...tables.windows, zone, memory: memory.windows }),
  );
  const odd = memory.of('odd windows', [found.windows], () => oddWindows(found.windows));
  const refused = new Set(
    odd.flatMap((window) => (window.severity === 'error' ? [window.window.id] : [])),
  );
  const windows = memory.list(
    'windows',
    refused.size === 0 ? found.windows : found.windows.filter((window) => !refused.has(window.id)),
  );
  const { faults: readFaults, rowOf: windowRows } = found;
  const windowFaults =
    odd.length === 0
      ? readFaults
      : [...readFaults, ...oddFaults(odd, tables.windows, windowRows)].sort(byLine);
  const ofWork = tables.work;
  const work =
    ofWork &&
    memory.of('work', cacheKeyOf(ofWork, zone), () =>
      activitiesFrom(ofWork.table, { ...ofWork, zone, memory: memory.work }),
    );
  const rest = otherTables(readers, tables, zone, windows, memory);
  const { resources, trains, roster, temperatures, forecast, plant } = rest;
  const linked =
    ofWork && work
      ? memory.links(work.activities, {
          windows,
          windowRows,
          activityRows: work.rowOf,
          ...(resources && { resources: resources.resources }),
          curing: site.concrete !== undefined,
          say: sayOfWork(ofWork, work.rowOf),
        })
      : { activities: [], faults: [] };
  const plan: Plan = {
    zone,
    windows,
    activities: memory.list('activities', linked.activities),
    resources: resources?.resources ?? none,
    rules,
  };
  const read = tablesRead(tables, {
    windows: windowRows,
    work: work?.rowOf,
    resources: resources?.rowOf,
  });
  const years = memory.of('years', [windows], () => yearsOf(windows));
  const far = (kind: TableKind): readonly Fault[] => {
    const table = tables[kind];
    if (!table || !years) return none;
    const from = [...datesOf(kind, table, memory), table.file, table.dateOrder, ...years];
    return memory.of(`far ${kind}`, from, () => farDateFaults(kind, table, years));
  };
  const withFaults = (kind: TableKind, ...of: readonly (readonly Fault[] | undefined)[]): Fault[] =>
    [...of, far(kind)].flatMap((item) => item ?? none).sort(byLine);
  const faults = [
    ...orderFaults,
    ...windowFaults,
    ...withFaults('work', work?.faults, linkFaults(linked.faults, windowFaults)),
    ...withFaults('resources', resources?.faults),
    ...ruleFaults,
    ...withFaults('trains', trains?.faults, trainWindowFaults(tables.trains, windowRows)),
    ...withFaults('roster', roster?.faults),
    ...withFaults('temperatures', temperatures?.faults),
    ...withFaults('forecast', forecast?.faults),
    ...(plant?.faults ?? none),
  ];
  return {
    plan,
    trains: trains?.trains ?? [],
    turns: roster?.turns ?? [],
    temperatures: temperatures?.rows ?? [],
    forecast: forecast?.rows ?? [],
    plant: plant?.plant ?? [],
    site,
    files: Object.fromEntries(
      Object.entries(tables).map(([kind, given]: [string, Given]) => [kind, given.file]),
    ),
    faults,
    packagesLeftOut: packagesLeftOut({ faults, tables: read }),
    notes: [
      ...leftOutNotes({ faults, tables: read }),
      ...assumptionsOf({ plan, tables: read }, memory),
    ],
  };
}

/** The tables, each with the order its dates are read in. */
const withOrders = (given: Tables, orders: { readonly [K in TableKind]?: DateOrder }): Tables => ({
  windows: { ...given.windows, ...(orders.windows && { dateOrder: orders.windows }) },
  ...optionalTables((kind) => {
    const table = given[kind];
    return table && { ...table, ...(orders[kind] && { dateOrder: orders[kind] }) };
  }),
});

const tablesRead = (
  tables: Tables,
  rowsOf: { readonly [K in TableKind]?: TableRead['rowOf'] | undefined },
): LeftOut['tables'] =>
  Object.fromEntries(
    tableKinds.flatMap((kind) => {
      const given = tables[kind];
      const rowOf = rowsOf[kind];
      return given ? [[kind, { ...given, ...(rowOf && { rowOf }) }]] : [];
    }),
  );

const noSite: Site = {};
const none: readonly never[] = [];

/** The tables that are read whole, each again only where it, or what it is read by, has changed. */
function otherTables(
  readers: OtherReaders | undefined,
  tables: Tables,
  zone: string,
  windows: readonly AccessWindow[],
  memory: PlanCache,
) {
  const read = <K extends keyof OtherReaders>(
    kind: K,
    also: { readonly windows?: readonly AccessWindow[] } = {},
  ): ReturnType<OtherReaders[K]> | undefined => {
    const given = tables[kind];
    if (!given) return undefined;
    const from = [...cacheKeyOf(given, zone), also.windows];
    return memory.of(kind, from, () => {
      const reader = readers![kind] as (
        table: Table,
        options: object,
      ) => ReturnType<OtherReaders[K]>;
      return reader(given.table, { ...given, zone, ...also });
    });
  };
  return {
    resources: read('resources'),
    trains: read('trains', { windows }),
    roster: read('roster'),
    temperatures: read('temperatures'),
    forecast: read('forecast'),
    plant: read('plant'),
  };
}

/** All that what its dates say hangs on. */
function datesOf(kind: TableKind, { table, map }: Given, memory: PlanCache): readonly unknown[] {
  const at = memory.of(`date columns ${kind}`, [table.columns, map], () =>
    dateColumns(table.columns, kind, map),
  );
  return [table.columns, map, memory.cells(kind, table, at)];
}

/** Everything that what is read of a table hangs on. */
const cacheKeyOf = (
  { table, file, map, unread, dateOrder }: Given,
  zone: string,
): readonly unknown[] => [table, file, map, unread, dateOrder, zone];

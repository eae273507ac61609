import type { PlanDocument, TableText } from './plan-document.js';
import type { RuleSet } from './rule-set.js';

// What a page needs before it reads a plan. No schema here: it would load the validation library.

/** The tables every plan has, empty or not. */
export const planTables = ['windows', 'work', 'resources', 'trains'] as const;
/** The tables a plan may have: what people, neighbours and weather ask of it. */
export const siteTables = ['roster', 'temperatures', 'forecast', 'plant'] as const;
/** Every kind of table that a document may have, those of the plan before those of the site. */
export const tableKinds = [...planTables, ...siteTables] as const;
/** `windows`, `work`, `resources`, `trains`, or a table of people and site. */
export type TableKind = (typeof tableKinds)[number];

/** Rules that deduct nothing. */
export const noRules: RuleSet = {
  schema: 1,
  name: 'none',
  leadIn: [],
  leadOut: [],
  margin: { minutes: 0 },
  curfews: [],
};

/** A table without columns or rows, under the name of the file it would be saved as. */
export function emptyTable(file: string): TableText {
  return { file, columns: [], rows: [] };
}

/** A table of a plan; one it does not have is empty, under the file name it would be saved as. */
export function tableIn(document: PlanDocument, kind: TableKind): TableText {
  return document.tables[kind] ?? emptyTable(`${kind}.csv`);
}

/** A plan with nothing in it: four empty tables and rules that deduct nothing. */
export function emptyPlan(name: string, zone: string): PlanDocument {
  return {
    schema: 1,
    name,
    zone,
    tables: {
      windows: emptyTable('windows.csv'),
      work: emptyTable('work.csv'),
      resources: emptyTable('resources.csv'),
      trains: emptyTable('trains.csv'),
    },
    rules: noRules,
  };
}

import { emptyTable, ruleSetSchema, type PlanDocument } from '../../src/model/index.js';

const days = (first: number, count: number): string[] =>
  Array.from({ length: count }, (_, at) =>
    new Date(Date.UTC(2027, 0, 1 + first + at)).toISOString().slice(0, 10),
  );

/** A plan of so many nights, every fortieth a closure of four days, and of so many packages of four activities each. */
export function largePlan(windows: number, packages: number): PlanDocument {
  const dates = days(0, windows + 5);
  return {
    schema: 1,
    name: 'Large plan',
    zone: 'Europe/London',
    tables: {
      windows: {
        file: 'windows.csv',
        columns: ['window', 'title', 'start', 'end', 'status'],
        rows: Array.from({ length: windows }, (_, at) => [
          `X${at}`,
          `Night ${at} at Marl Vale`,
          `${dates[at]} 23:00`,
          `${dates[at + (at % 40 === 39 ? 4 : 1)]} 05:30`,
          at % 17 === 4 ? 'withdrawn' : 'confirmed',
        ]),
      },
      work: {
        file: 'work.csv',
        columns: ['package', 'activity', 'title', 'minutes', 'after'],
        rows: Array.from({ length: packages * 4 }, (_, at) => [
          `P${Math.floor(at / 4)}`,
          `A${at}`,
          `Work ${at}`,
          String(30 + ((at * 37) % 90)),
          at % 4 ? `A${at - 1}` : '',
        ]),
      },
      resources: emptyTable('resources.csv'),
      trains: emptyTable('trains.csv'),
    },
    rules: ruleSetSchema.parse({
      schema: 1,
      name: 'Bench rules',
      leadIn: [
        { step: 'Take the line', minutes: 30, source: 'Invented for this bench' },
        { step: 'Set up', minutes: 20, source: 'Invented for this bench' },
      ],
      leadOut: [{ step: 'Give the line up', minutes: 35, source: 'Invented for this bench' }],
      margin: { minutes: 30 },
    }),
  };
}

/** The same plan with a window's end moved; `turn` says to when. */
export function withEnd(document: PlanDocument, row: number, turn: number): PlanDocument {
  const { windows } = document.tables;
  const rows = windows.rows.map((cells, at) =>
    at === row
      ? cells.map((cell, column) =>
          windows.columns[column] === 'end'
            ? cell.replace(/\d\d$/, String(31 + (turn % 20)))
            : cell,
        )
      : cells,
  );
  return { ...document, tables: { ...document.tables, windows: { ...windows, rows } } };
}

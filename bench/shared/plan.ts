import { readFileSync } from 'node:fs';
import { dayNumber, dayText } from '../../src/calendar/index.js';
import { emptyPlan, ruleSetSchema, type PlanDocument } from '../../src/model/index.js';

/** Two tracks under an overhead line: steps, a curfew for loud work, shifts and a margin. */
export const rules = ruleSetSchema.parse(
  JSON.parse(readFileSync('sample-csv/rules/electrified-two-track.json', 'utf8')),
);

const sites = ['Kelverby', 'Marl Cutting', 'Tanner Bank', 'Oxley Vale'] as const;
const steps = ['Prepare', 'Lift out', 'Place and fasten', 'Test'] as const;

const windowColumns = [
  'window',
  'title',
  'start',
  'end',
  'zone',
  'lines',
  'from',
  'to',
  'isolation',
  'status',
  'trains after',
];

/** Four sites a night from January 2027 on; every sixth is a weekend of 29 hours. */
function windowRow(at: number): string[] {
  const night = Math.floor(at / sites.length);
  const day = dayNumber(2027, 1, 4) + night;
  const site = at % sites.length;
  const weekend = night % 6 === 5;
  return [
    `W${at}`,
    `${weekend ? 'Weekend' : 'Night'} at ${sites[site]!}`,
    `${dayText(day)} ${weekend ? '22:15' : `23:${10 + (at % 40)}`}`,
    `${dayText(day + (weekend ? 2 : 1))} ${weekend ? '03:15' : `05:${10 + ((at * 7) % 40)}`}`,
    '',
    site === 3 ? 'Up' : 'Up;Down',
    String(18_000 + 2000 * site),
    String(24_000 + 2000 * site),
    ['', 'OV1', 'OV1;OV2', 'OV2'][(at * 7) % 4]!,
    at % 97 === 0 ? 'withdrawn' : 'confirmed',
    weekend ? 'Sunday trains' : 'weekday trains',
  ];
}

const workColumns = [
  'package',
  'activity',
  'title',
  'after',
  'minutes',
  'minutes low',
  'minutes high',
  'units',
  'done',
  'minutes per unit',
  'set up',
  'make safe',
  'lines',
  'from',
  'to',
  'isolation',
  'resources',
  'loud',
  'not before',
  'key date',
];

/** Every third activity is of repeated units, the rest are whole; in a package one follows the other. */
function workRow(at: number, perPackage: number): string[] {
  const pack = Math.floor(at / perPackage);
  const within = at % perPackage;
  const most = 30 + ((at * 37) % 211);
  const units = at % 3 === 2;
  const from = 18_200 + ((pack * 370) % 9000);
  const cells = units
    ? ['', '', '', String(4 + (at % 9)), String(at % 4), String(12 + (at % 15)), '20', '10']
    : [String(most), String(most - 10), String(most + 45), '', '', '', '', ''];
  return [
    `P${pack}`,
    `A${at}`,
    `${steps[within % steps.length]!}, panel ${at % 40}`,
    within === 0 ? '' : `A${at - 1}${at % 5 === 0 ? ' + 30 min' : ''}`,
    ...cells,
    pack % 3 === 0 ? 'Up' : '',
    String(from),
    String(from + 600),
    ['', 'OV1', '', 'OV2'][(pack * 3) % 4]!,
    within % 4 === 1 ? 'crane:1; gang:1' : `gang:${1 + (at % 2)}`,
    at % 11 === 0 ? 'yes' : '',
    at % 13 === 0 ? '2027-02-01' : '',
    within === perPackage - 1 && pack % 5 === 0 ? '2030-03-31' : '',
  ];
}

const resourceColumns = ['resource', 'capacity', 'from', 'to', 'rate per hour', 'least hours'];
const resourceRows = [
  ['gang', '6', '', '', '160', '8'],
  ['crane', '2', '', '', '420', '10'],
  ['crane', '1', '2028-06-01', '2028-06-30', '', ''],
];

/**
 * A whole plan as it is typed, every cell a text: so many windows, so many activities in packages of `perPackage`, by
 * the rules of the sample. Invented. Equal arguments give equal plans that share no row.
 */
export function planOf(windows: number, activities: number, perPackage = 4): PlanDocument {
  const empty = emptyPlan('Bench', 'Europe/London');
  const { tables } = empty;
  return {
    ...empty,
    rules,
    tables: {
      ...tables,
      windows: { ...tables.windows, columns: windowColumns, rows: rowsOf(windows, windowRow) },
      work: {
        ...tables.work,
        columns: workColumns,
        rows: rowsOf(activities, (at) => workRow(at, perPackage)),
      },
      resources: {
        ...tables.resources,
        columns: resourceColumns,
        rows: resourceRows.map((row) => [...row]),
      },
    },
  };
}

function rowsOf(count: number, make: (at: number) => string[]): string[][] {
  return Array.from({ length: count }, (_, at) => make(at));
}

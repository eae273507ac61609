import * as z from 'zod/mini';
import { isoText } from '../../calendar/index.js';
import { nameOf, type PlanName } from '../../engine/plan-out/plan-name.js';
import {
  agreedPlansSchema,
  provenShape,
  type Proof,
  type AgreedPlan,
  type Fault,
  type Placement,
  type Plan,
} from '../../model/index.js';
import { planId } from '../../planner/plan-id.js';
import {
  decodeBytes,
  looksLikeArchive,
  outsideText,
  placementsFrom,
  readTable,
  tableOfRecords,
  type Table,
} from '../../tables/index.js';
import { readProblem } from './read-problems.js';
import { fileName, readFile } from './read-sources.js';

/** A given plan of work, with its agreed name as far as its file gives it. */
export interface GivenFile {
  readonly placements: readonly Placement[];
  readonly named: PlanName;
  /** Local day before which pieces keep their place, `2027-03-07`, if its file gives one. */
  readonly frozenUntil?: string;
  /** What the search that made it claimed to have proven. */
  readonly proof?: Proof | undefined;
}

/** A plan of work as read, with all faults found. */
export interface ReadPlacements extends GivenFile {
  readonly faults: readonly Fault[];
}

/** The fields of `allocate --json` that are read here. */
const certificateSchema = z.object({
  inputs: z.string(),
  mostPlaced: z.boolean(),
  cutShort: z.boolean(),
  objectives: z.array(z.object(provenShape)),
});
const allocateSchema = z.object({
  plan: z.optional(z.object({ id: z.string() })),
  certificate: z.optional(z.unknown()),
  placements: z.array(
    z.object({
      activity: z.string(),
      window: z.nullable(z.string()),
      from: z.string(),
      to: z.string(),
      units: z.optional(z.number()),
    }),
  ),
});
/** A plan file with an agreed plan of work. */
const { now: nowSchema, frozenUntil: frozenSchema } = agreedPlansSchema.shape;
const documentSchema = z.object({
  agreed: z.object({ now: nowSchema, frozenUntil: frozenSchema }),
});

/**
 * Reads the plan of work in a file: output of `allocate --json`, a plan file with an agreed plan, or a table (CSV or
 * workbook) of activity, window, from, to, units.
 *
 * @throws {UsageError} When the file cannot be read.
 */
export async function readPlacements(
  path: string,
  option: 'plan' | 'from' | 'against',
  plan: Plan,
): Promise<ReadPlacements> {
  const file = fileName(path);
  const bytes = readFile(path, option);
  if (looksLikeArchive(bytes)) return fromWorkbook(bytes, file, plan);
  const { text } = decodeBytes(bytes);
  if (!/^\s*[{[]/.test(text)) return fromTable(readTable(text), plan, file);
  const found = planOfJson(text, plan.zone);
  if (found)
    return {
      ...fromTable(found.table, plan, `${file}, placements`, found.agreed),
      ...found.frozen,
      proof: found.proof,
    };
  const fault: Fault = {
    ...readProblem('plan-not-read'),
    severity: 'error',
    file,
  };
  return { placements: [], named: { id: planId([]) }, faults: [fault] };
}

/** The pieces of a table, with the plan's name from its rows if they still match that plan. */
function fromTable(table: Table, plan: Plan, file: string, agreed?: AgreedPlan): ReadPlacements {
  const { placements, faults } = placementsFrom(table, plan, { file });
  const id = planId(placements);
  if (agreed) return { placements, faults, named: { ...nameOf(agreed), id } };
  const said = table.rows
    .map(({ cells }) => cells)
    .find((cells) => cellOf(table, cells, 'plan id') === id);
  const [name, revision] = ['plan', 'revision'].map((text) => said && cellOf(table, said, text));
  const named =
    name && /^[1-9]\d*$/.test(revision ?? '') ? { id, name, revision: Number(revision) } : { id };
  return { placements, faults, named };
}

const cellOf = ({ columns }: Table, cells: readonly string[], heading: string): string => {
  const at = columns.findIndex((column) => column.trim().toLowerCase() === heading);
  return at < 0 ? '' : (cells[at] ?? '').trim();
};

interface PlanOfJson {
  /** Line n of the table is the n-th piece. */
  readonly table: Table;
  readonly agreed?: AgreedPlan;
  readonly frozen?: { readonly frozenUntil: string };
  readonly proof?: Proof | undefined;
}

/** The plan of work in a JSON text; undefined when there is none. */
function planOfJson(text: string, zone: string): PlanOfJson | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  const printed = allocateSchema.safeParse(value);
  if (printed.success)
    return { table: tableWith(printed.data.placements), proof: proofIn(printed.data) };
  const kept = documentSchema.safeParse(value);
  const { now, frozenUntil } = kept.success ? kept.data.agreed : {};
  if (!now) return undefined;
  const pieces = now.placements.map((placement) => ({
    ...placement,
    from: isoText(placement.from, zone),
    to: isoText(placement.to, zone),
  }));
  return {
    table: tableWith(pieces),
    agreed: now,
    proof: now.proof,
    ...(frozenUntil !== undefined && { frozen: { frozenUntil } }),
  };
}

/** What an answer claims to be proven about its plan. */
function proofIn({ plan, certificate }: z.infer<typeof allocateSchema>): Proof | undefined {
  const read = certificateSchema.safeParse(certificate);
  if (!plan || !read.success) return undefined;
  const { inputs, mostPlaced, cutShort, objectives } = read.data;
  return {
    ...{ plan: plan.id, inputs, mostPlaced, cutShort },
    objectives,
  };
}

type Printed = z.infer<typeof allocateSchema>['placements'];

function tableWith(placements: Printed): Table {
  return {
    delimiter: ',',
    columns: ['activity', 'window', 'from', 'to', 'units'],
    line: 0,
    rows: placements.map(({ activity, window, from, to, units }, at) => ({
      cells: [activity, window ?? outsideText, from, to, units === undefined ? '' : String(units)],
      line: at + 1,
    })),
    faults: [],
  };
}

async function fromWorkbook(bytes: Uint8Array, file: string, plan: Plan): Promise<ReadPlacements> {
  const { readWorkbook } = await import('../../tables/workbook/read-workbook.js');
  const { sheets, faults } = await readWorkbook(bytes);
  const sheet =
    sheets.find((item) => item.name.trim().toLowerCase() === 'placements') ??
    sheets.find((item) => !item.hidden && item.rows.length > 0);
  if (!sheet)
    return {
      placements: [],
      named: { id: planId([]) },
      faults: faults.map((fault) => ({ ...fault, file })),
    };
  return fromTable(tableOfRecords(sheet), plan, `${file}, sheet ${sheet.name}`);
}

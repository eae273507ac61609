import * as z from 'zod/mini';
import { isoText } from '../calendar/index.js';
import { agreedPlansSchema, type Fault, type Placement, type Plan } from '../model/index.js';
import {
  decodeBytes,
  looksLikeArchive,
  outsideText,
  placementsFrom,
  readTable,
  tableOfRecords,
  type Table,
} from '../tables/index.js';
import { fileName, readFile } from './read-sources.js';

/** A plan of work as it was read, with every fault found. */
export interface ReadPlacements {
  readonly placements: readonly Placement[];
  readonly faults: readonly Fault[];
}

/** What `allocate --json` prints, as far as it is read here. */
const allocateSchema = z.object({
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
/** A plan file with a plan of work agreed in it. */
const documentSchema = z.object({ agreed: z.object({ now: agreedPlansSchema.shape.now }) });

/**
 * The plan of work in a file: what `allocate --json` printed, a plan file in which one is agreed, or a table (CSV or
 * workbook) of activity, window, from, to, units.
 *
 * @throws {UsageError} When the file cannot be read.
 */
export async function readPlacements(
  path: string,
  option: 'plan' | 'from',
  plan: Plan,
): Promise<ReadPlacements> {
  const file = fileName(path);
  const bytes = readFile(path, option);
  if (looksLikeArchive(bytes)) return fromWorkbook(bytes, file, plan);
  const { text } = decodeBytes(bytes);
  if (!/^\s*[{[]/.test(text)) return placementsFrom(readTable(text), plan, { file });
  const table = tableOfJson(text, plan.zone);
  if (table) return placementsFrom(table, plan, { file: `${file}, placements` });
  const fault: Fault = {
    code: 'plan-not-read',
    severity: 'error',
    file,
    message: 'The text is no plan of work.',
    mend: 'Give what "allocate --json" printed, a plan file in which a plan is agreed, or a CSV file of activity, window, from, to, units.',
  };
  return { placements: [], faults: [fault] };
}

/** The placements of a JSON text as a table of which line n is the n-th; undefined where there are none. */
function tableOfJson(text: string, zone: string): Table | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  const printed = allocateSchema.safeParse(value);
  if (printed.success) return tableWith(printed.data.placements);
  const kept = documentSchema.safeParse(value);
  const now = kept.success ? kept.data.agreed.now : undefined;
  return (
    now &&
    tableWith(
      now.placements.map((one) => ({
        ...one,
        from: isoText(one.from, zone),
        to: isoText(one.to, zone),
      })),
    )
  );
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
  const { readWorkbook } = await import('../tables/workbook/read-workbook.js');
  const { sheets, faults } = await readWorkbook(bytes);
  const sheet =
    sheets.find((one) => one.name.trim().toLowerCase() === 'placements') ??
    sheets.find((one) => !one.hidden && one.rows.length > 0);
  if (!sheet) return { placements: [], faults: faults.map((one) => ({ ...one, file })) };
  return placementsFrom(tableOfRecords(sheet), plan, { file: `${file}, sheet ${sheet.name}` });
}

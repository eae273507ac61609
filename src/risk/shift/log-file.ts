import * as z from 'zod/mini';
import type { Instant } from '../../calendar/index.js';
import { chainOf } from './log-chain.js';
import type { ShiftEntry, ShiftLog } from './shift-log.js';
import { type Problem, problemsOf } from '../../model/index.js';
import type { LogProblems } from './log-problems.js';

const problemOf = problemsOf<LogProblems>();

// zod probes for `new Function` unless told not to, which a strict content security policy reports.
z.config({ jitless: true });

const name = z.string().check(z.minLength(1));
const moment = z.number().check(z.int());
const minutes = z.number().check(z.minimum(0), z.maximum(100_000));
const stage = z.optional(z.enum(['lead-in', 'lead-out']));

const eventSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('granted') }),
  z.strictObject({ kind: z.literal('line-granted'), line: name }),
  z.strictObject({ kind: z.literal('line-expected'), line: name, expectedAt: moment }),
  z.strictObject({ kind: z.literal('asked-back'), by: moment }),
  z.strictObject({ kind: z.literal('end-agreed'), end: moment }),
  z.strictObject({ kind: z.literal('step-started'), step: name, stage }),
  z.strictObject({ kind: z.literal('step-finished'), step: name, stage }),
  z.strictObject({ kind: z.literal('activity-started'), activity: name }),
  z.strictObject({ kind: z.literal('activity-finished'), activity: name }),
  z.strictObject({
    kind: z.literal('units-done'),
    activity: name,
    units: z.number().check(z.int(), z.minimum(0), z.maximum(1_000_000)),
  }),
  z
    .strictObject({
      kind: z.literal('minutes-left'),
      activity: name,
      low: minutes,
      likely: minutes,
      high: minutes,
    })
    .check(
      z.refine(({ low, likely, high }) => low <= likely && likely <= high, 'low <= likely <= high'),
    ),
  z.strictObject({ kind: z.literal('decided'), point: name, name, go: z.boolean() }),
  z.strictObject({ kind: z.literal('handed-back') }),
  z.strictObject({ kind: z.literal('note'), text: z.string() }),
  z.strictObject({ kind: z.literal('struck-out') }),
]);

const entrySchema = z.strictObject({
  id: name,
  at: moment,
  enteredAt: moment,
  by: z.string(),
  event: eventSchema,
  corrects: z.optional(name),
});

const fileSchema = z.strictObject({
  schema: z.literal(1),
  window: name,
  /** When the window starts: the same name may stand for another night. */
  start: z.optional(moment),
  log: z.array(z.unknown()),
  chain: z.optional(z.array(z.string())),
});

/** A log read from a file, or why it could not be. */
export interface ReadLog {
  readonly window: string | null;
  /** Null where the file does not say. */
  readonly start: Instant | null;
  readonly log: ShiftLog;
  /** What could not be read; the entries that could be are in `log`. */
  readonly faults: readonly Problem[];
}

/** A shift's log as a file that another device can take in. */
export function shiftLogFile(window: string, log: ShiftLog, start?: Instant): string {
  const file = {
    schema: 1,
    window,
    ...(start !== undefined && { start }),
    log,
    chain: chainOf(log),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Reads what `shiftLogFile` wrote. One entry that makes no sense does not lose the others. */
export function readShiftLog(text: string): ReadLog {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return {
      window: null,
      start: null,
      log: [],
      faults: [problemOf('log-not-read')],
    };
  }
  const file = fileSchema.safeParse(raw);
  if (!file.success)
    return {
      window: null,
      start: null,
      log: [],
      faults: [problemOf('log-not-read/other')],
    };
  const log: ShiftEntry[] = [];
  const faults: Problem[] = [];
  const known = new Set<string>();
  file.data.log.forEach((item, index) => {
    const entry = entrySchema.safeParse(item);
    if (!entry.success) {
      const { path, message } = entry.error.issues[0]!;
      faults.push(
        problemOf('log-not-read/entry', { entry: index + 1, place: path.join('.'), message }),
      );
    } else if (known.has(entry.data.id)) {
      faults.push(problemOf('log-not-read/id-twice', { entry: index + 1, id: entry.data.id }));
    } else {
      known.add(entry.data.id);
      // Absent and undefined are the same in a file.
      log.push(JSON.parse(JSON.stringify(entry.data)) as ShiftEntry);
    }
  });
  const { window, start = null, chain } = file.data;
  if (chain && faults.length === 0) {
    const own = chainOf(log);
    const changed = Math.max(own.length, chain.length);
    const at = Array.from({ length: changed }, (_, k) => k).find((k) => own[k] !== chain[k]);
    if (at !== undefined) faults.push(problemOf('log-not-read/changed', { entry: at + 1 }));
  }
  return { window, start, log, faults };
}

/** Of what others sent as entries of a log, those that a file could hold. */
export function soundEntries(sent: readonly unknown[]): ShiftLog {
  return sent.flatMap((item) => {
    const entry = entrySchema.safeParse(item);
    return entry.success ? [JSON.parse(JSON.stringify(entry.data)) as ShiftEntry] : [];
  });
}

export interface MergedLog {
  readonly log: ShiftLog;
  /** Entries that were not there before. */
  readonly added: readonly string[];
  /** Ids under which the two logs say different things: the own entry is kept. */
  readonly differing: readonly string[];
}

/** Two logs of one shift as one, by the ids of their entries, in the order in which they were written down. */
export function mergeShiftLogs(own: ShiftLog, other: ShiftLog): MergedLog {
  const byId = new Map(own.map((entry) => [entry.id, entry]));
  const added: string[] = [];
  const differing: string[] = [];
  for (const entry of other) {
    const mine = byId.get(entry.id);
    if (!mine) {
      byId.set(entry.id, entry);
      added.push(entry.id);
    } else if (canonical(mine) !== canonical(entry)) differing.push(entry.id);
  }
  const log = [...byId.values()].sort(
    (a, b) => a.enteredAt - b.enteredAt || (a.id < b.id ? -1 : Number(a.id > b.id)),
  );
  return { log, added, differing };
}

/** The same text for the same entry, whatever the order of its keys. */
function canonical(entry: ShiftEntry): string {
  const sorted = (_: string, value: unknown): unknown =>
    value !== null && typeof value === 'object' && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value;
  return JSON.stringify(entry, sorted);
}

import * as z from 'zod/mini';
import type { Instant } from '../../calendar/index.js';
import { chainOf } from './log-chain.js';
import type { ShiftEntry, ShiftLog } from './shift-log.js';
import { type Problem, problemsOf, shiftEntrySchema } from '../../model/index.js';
import type { LogProblems } from './log-problems.js';

const problemOf = problemsOf<LogProblems>();

// zod probes for `new Function` unless told not to, which a strict content security policy reports.
z.config({ jitless: true });

const name = z.string().check(z.minLength(1));
const moment = z.number().check(z.int());

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
    const entry = shiftEntrySchema.safeParse(item);
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

import type { Instant } from '../../src/calendar/index.js';
import type { ShiftEntry, ShiftEvent } from '../../src/engine/index.js';

/** What a log entry says happened. */
export type HandbackLogEvent = ShiftEvent;
/** One line of the log. Lines are only ever added; a correction is a line of its own. */
export type HandbackLogEntry = ShiftEntry;

/** An entry as first written with what was written to put it right, oldest first. */
export interface ShiftLine {
  readonly original: HandbackLogEntry;
  readonly corrections: readonly HandbackLogEntry[];
  /** The last of them: what counts now. */
  readonly standing: HandbackLogEntry;
}

/** The log as lines, the last to be first written on top. */
export function shiftLines(log: readonly HandbackLogEntry[]): ShiftLine[] {
  const byOld = new Map(
    log.flatMap((one) => (one.corrects === undefined ? [] : [[one.corrects, one]])),
  );
  const known = new Set(log.map((one) => one.id));
  return log
    .filter((one) => one.corrects === undefined || !known.has(one.corrects))
    .map((original) => {
      const corrections: HandbackLogEntry[] = [];
      const met = new Set([original.id]);
      for (
        let next = byOld.get(original.id);
        next && !met.has(next.id);
        next = byOld.get(next.id)
      ) {
        corrections.push(next);
        met.add(next.id);
      }
      return { original, corrections, standing: corrections.at(-1) ?? original };
    })
    .sort((a, b) => b.original.enteredAt - a.original.enteredAt);
}

/** When the log says that a step or an activity began and ended, corrections counted. */
export function seenOf(
  lines: readonly ShiftLine[],
  subject: { readonly activity?: string; readonly name: string },
): { startedAt?: Instant; finishedAt?: Instant } {
  const seen: { startedAt?: Instant; finishedAt?: Instant } = {};
  for (const { standing } of lines) {
    const { event, at } = standing;
    const same =
      'activity' in event
        ? event.activity === subject.activity
        : 'step' in event && subject.activity === undefined && event.step === subject.name;
    if (!same) continue;
    if (event.kind.endsWith('-started')) seen.startedAt = Math.min(at, seen.startedAt ?? at);
    if (event.kind.endsWith('-finished')) seen.finishedAt = at;
  }
  return seen;
}

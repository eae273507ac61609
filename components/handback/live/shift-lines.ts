import type { Instant } from '../../../src/calendar/index.js';
import {
  correctionsOf,
  grantStep,
  lineGrantStep,
  type ShiftEntry,
  type ShiftEvent,
} from '../../../src/engine/index.js';
import type { CutOff } from '../result-parts.js';

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
  return correctionsOf(log)
    .map(([original, ...corrections]) => ({
      original: original!,
      corrections,
      standing: corrections.at(-1) ?? original!,
    }))
    .sort((a, b) => b.original.enteredAt - a.original.enteredAt);
}

const endings = /^(granted|line-granted|.*-finished)$/;

/** When the log says that a step or an activity began and ended, corrections counted. */
export function seenOf(
  lines: readonly ShiftLine[],
  subject: CutOff,
  cutOffs: readonly CutOff[],
): { startedAt?: Instant; finishedAt?: Instant } {
  const seen: { startedAt?: Instant; finishedAt?: Instant } = {};
  for (const { standing } of lines) {
    const { event, at } = standing;
    if (!isOf(event, subject, cutOffs)) continue;
    if (event.kind.endsWith('-started')) seen.startedAt = Math.min(at, seen.startedAt ?? at);
    else if (endings.test(event.kind)) seen.finishedAt = at;
  }
  return seen;
}

function isOf(event: HandbackLogEvent, subject: CutOff, cutOffs: readonly CutOff[]): boolean {
  const { kind, name, activity } = subject;
  if ('activity' in event) return event.activity === activity;
  if (activity !== undefined) return false;
  if (event.kind === 'granted') return name === grantStep;
  if ('line' in event) return name === lineGrantStep(event.line);
  if (!('step' in event) || event.step !== name) return false;
  // One that nobody placed is the first of that name: that of the lead-in where both have one.
  const first = cutOffs.find((cutOff) => cutOff.activity === undefined && cutOff.name === name);
  return (event.stage ?? first?.kind) === kind;
}

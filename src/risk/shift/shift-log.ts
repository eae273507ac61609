import type { Instant } from '../../calendar/index.js';
import { grantStep, handedBackStep, lineGrantStep, type Actual, type Stage } from '../types.js';

/** What an entry says happened. */
export type ShiftEvent =
  | { readonly kind: 'granted' }
  /** One line of several is granted; or when it is said to come. */
  | { readonly kind: 'line-granted'; readonly line: string }
  | { readonly kind: 'line-expected'; readonly line: string; readonly expectedAt: Instant }
  /** The line is asked for before its booked end. */
  | { readonly kind: 'asked-back'; readonly by: Instant }
  /** It was agreed that the line goes back earlier than booked. */
  | { readonly kind: 'end-agreed'; readonly end: Instant }
  | {
      readonly kind: 'step-started' | 'step-finished';
      readonly step: string;
      /** Where a step of the lead-in and one of the lead-out are called alike; absent: the one of the lead-in. */
      readonly stage?: Stage;
    }
  | { readonly kind: 'activity-started' | 'activity-finished'; readonly activity: string }
  /** Units finished in this window so far, not since the last entry. */
  | { readonly kind: 'units-done'; readonly activity: string; readonly units: number }
  | {
      readonly kind: 'minutes-left';
      readonly activity: string;
      readonly low: number;
      readonly likely: number;
      readonly high: number;
    }
  /** What was said at a go/no-go point, by its id. */
  | {
      readonly kind: 'decided';
      readonly point: string;
      readonly name: string;
      readonly go: boolean;
    }
  | { readonly kind: 'handed-back' }
  | { readonly kind: 'note'; readonly text: string }
  /** Only as a correction: what it corrects did not happen. */
  | { readonly kind: 'struck-out' };

/** One line of the log. Lines are only ever added. */
export interface ShiftEntry {
  readonly id: string;
  /** When it happened. */
  readonly at: Instant;
  /** When it was written down. */
  readonly enteredAt: Instant;
  readonly by: string;
  readonly event: ShiftEvent;
  /** Id of the entry this one puts right. That entry stays in the log. */
  readonly corrects?: string;
}

/** What was written down in a shift, in the order it was entered; a correction is an entry that names the one it corrects. */
export type ShiftLog = readonly ShiftEntry[];

/** An entry as it counts now, with those it replaced, the first written first. */
export interface StandingEntry {
  readonly entry: ShiftEntry;
  readonly replaced: readonly ShiftEntry[];
}

/** Something in a log that cannot be so. The entry is not counted; the log keeps it. */
export interface ShiftFault {
  readonly code: 'finish-before-start' | 'fewer-units' | 'entered-before-it-happened';
  readonly entry: string;
  readonly text: string;
}

/** What a log says has happened, corrections counted. Derived: never stored. */
export interface ShiftState {
  /** In order of when things happened, then of when they were written down. */
  readonly standing: readonly StandingEntry[];
  readonly struckOut: readonly ShiftEntry[];
  readonly grantedAt: Instant | null;
  readonly handedBackAt: Instant | null;
  readonly actuals: readonly Actual[];
  readonly faults: readonly ShiftFault[];
}

/**
 * The log with one more line. The given log is not changed.
 *
 * @throws {RangeError} When the id is taken, or the entry corrects one that is not in the log, is already corrected
 * (correct the correction instead), or strikes out nothing.
 */
export function appendEntry(log: ShiftLog, entry: ShiftEntry): ShiftLog {
  if (log.some((item) => item.id === entry.id))
    throw new RangeError(`entry ${entry.id} is there already`);
  if (entry.corrects !== undefined) {
    if (!log.some((item) => item.id === entry.corrects))
      throw new RangeError(`entry ${entry.corrects} is not in the log`);
    const later = log.find((item) => item.corrects === entry.corrects);
    if (later) throw new RangeError(`entry ${entry.corrects} was corrected by ${later.id}`);
  } else if (entry.event.kind === 'struck-out') {
    throw new RangeError('an entry that strikes out must say which');
  }
  return [...log, entry];
}

/** The entry that was first written of those that one puts right; null where they go round in a ring. */
function rootOf(entry: ShiftEntry, byId: ReadonlyMap<string, ShiftEntry>): ShiftEntry | null {
  const met = new Set([entry]);
  for (let at = entry; at.corrects !== undefined;) {
    const before = byId.get(at.corrects);
    if (!before) return at;
    if (met.has(before)) return null;
    met.add(before);
    at = before;
  }
  return [...met].at(-1)!;
}

/**
 * Each entry as first written with those that put it right, in the order in which they were written: the last counts.
 * So it does where two devices put one entry right, each its own way.
 */
export function correctionsOf(log: ShiftLog): readonly (readonly ShiftEntry[])[] {
  const byId = new Map(log.map((entry) => [entry.id, entry]));
  const groups = new Map<ShiftEntry, ShiftEntry[]>();
  for (const entry of log) {
    const root = rootOf(entry, byId);
    if (root) groups.set(root, [...(groups.get(root) ?? []), entry]);
  }
  return [...groups].map(([root, entries]) => [
    root,
    ...entries.filter((entry) => entry !== root).sort((a, b) => a.enteredAt - b.enteredAt),
  ]);
}

/** The entries that count: the last written of those that put one entry right. */
function standingOf(log: ShiftLog): { standing: StandingEntry[]; struckOut: ShiftEntry[] } {
  const standing: StandingEntry[] = [];
  const struckOut: ShiftEntry[] = [];
  for (const entries of correctionsOf(log)) {
    const entry = entries.at(-1)!;
    const replaced = entries.slice(0, -1);
    if (entry.event.kind === 'struck-out') struckOut.push(...replaced);
    else standing.push({ entry, replaced });
  }
  standing.sort((a, b) => a.entry.at - b.entry.at || a.entry.enteredAt - b.entry.enteredAt);
  return { standing, struckOut };
}

type Known = { -readonly [Key in keyof Actual]: Actual[Key] };

/** Takes one event into what is known of its step or activity. Returns a fault when it cannot be so. */
function take(known: Known, entry: ShiftEntry): ShiftFault | null {
  const { event, at, id } = entry;
  switch (event.kind) {
    case 'step-started':
    case 'activity-started':
      known.startedAt ??= at;
      return null;
    case 'granted':
    case 'line-granted':
    case 'handed-back':
    case 'step-finished':
    case 'activity-finished':
      known.finishedAt = at;
      return null;
    case 'line-expected':
      known.expectedAt = event.expectedAt;
      return null;
    case 'asked-back':
      known.wantedBy = event.by;
      return null;
    case 'end-agreed':
      known.agreedEnd = event.end;
      return null;
    case 'units-done':
      if (event.units < (known.unitsDone ?? 0))
        return {
          code: 'fewer-units',
          entry: id,
          text: `${event.units} units done, but ${known.unitsDone} were done before: correct the earlier entry if it was wrong.`,
        };
      if (event.units === known.unitsDone) return null;
      known.unitsDone = event.units;
      known.unitsAt = at;
      return null;
    case 'minutes-left':
      known.minutesLeft = { low: event.low, likely: event.likely, high: event.high };
      return null;
    default:
      return null;
  }
}

/** Events that are about the handback. */
const handing = new Set<ShiftEvent['kind']>(['handed-back', 'asked-back', 'end-agreed']);

/** The step or activity that an event is about; null where it is about none. */
function subjectOf(event: ShiftEvent): Known | null {
  if ('activity' in event) return { activity: event.activity };
  if ('step' in event) return { step: event.step, ...(event.stage && { stage: event.stage }) };
  if ('line' in event) return { step: lineGrantStep(event.line) };
  if (event.kind === 'granted') return { step: grantStep };
  return handing.has(event.kind) ? { step: handedBackStep } : null;
}

/** What the log says as known at `until`: entries of later happenings are left out. Absent: all. */
export function shiftState(log: ShiftLog, until: Instant = Infinity): ShiftState {
  const { standing, struckOut } = standingOf(log);
  const known = new Map<string, Known>();
  const faults: ShiftFault[] = [];
  let handedBackAt: Instant | null = null;
  for (const { entry } of standing) {
    const { event } = entry;
    if (entry.at > until) continue;
    if (entry.at > entry.enteredAt)
      faults.push({
        code: 'entered-before-it-happened',
        entry: entry.id,
        text: 'Written down before it happened: counted, but check the times.',
      });
    if (event.kind === 'handed-back') handedBackAt = entry.at;
    const subject = subjectOf(event);
    if (!subject) continue;
    const key = JSON.stringify(subject);
    const held = known.get(key) ?? subject;
    known.set(key, held);
    const fault = take(held, entry);
    if (fault) faults.push(fault);
    const ends = event.kind === 'activity-started' || event.kind === 'step-started';
    if (ends && held.finishedAt !== undefined && held.finishedAt < entry.at) {
      faults.push({
        code: 'finish-before-start',
        entry: entry.id,
        text: 'Started after it was finished: correct one of the two entries.',
      });
      delete held.startedAt;
    }
  }
  return {
    standing,
    struckOut,
    grantedAt: known.get(JSON.stringify({ step: grantStep }))?.finishedAt ?? null,
    handedBackAt,
    actuals: [...known.values()],
    faults,
  };
}

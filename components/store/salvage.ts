// From what is stored to the document: the newest sound snapshot and every sound edit after it. What cannot be trusted
// is counted and handed on, never used and never thrown away.
import { applyEdit, type Edit } from '../../src/edits/index.js';
import { planFrom, type Fault, type PlanDocument } from '../../src/model/index.js';
import {
  editIn,
  isSound,
  sound,
  type HeadRecord,
  type LogRecord,
  type SnapshotRecord,
} from './records.js';

/** All records of one plan, as they came out of the store. */
export interface Stored {
  readonly head: HeadRecord | undefined;
  readonly snapshots: readonly SnapshotRecord[];
  readonly log: readonly LogRecord[];
}

export interface Salvage {
  /** The last edit that is or was stored. */
  readonly seq: number;
  /** Absent: nothing could be made of what is stored. */
  readonly document?: PlanDocument;
  /** Why there is no document, where a sound one is there that this page cannot take. */
  readonly refusal?: Fault;
  /** `at` of the snapshot that was built on, where a newer one was damaged. Epoch ms. */
  readonly olderSnapshotAt?: number;
  /** Edits whose every copy is damaged or gone. */
  readonly lost: number;
  /** Edits that are sound and could not be made without a lost one. */
  readonly unplaced: readonly { readonly id: string; readonly at: number; readonly edit: Edit }[];
  /** Records whose checksum is wrong. */
  readonly damaged: readonly (HeadRecord | SnapshotRecord | LogRecord)[];
  /** One more damaged record could lose a change: the plan is to be written afresh. */
  readonly thin: boolean;
  /** The document as it is stored, where it is of an earlier schema. */
  readonly saved?: PlanDocument;
}

/** The log by `seq`, each the first sound one of its copies. */
export function soundLog(log: readonly LogRecord[]): Map<number, LogRecord> {
  const found = new Map<number, LogRecord>();
  for (const record of log)
    if (!found.has(record.seq) && isSound(record)) found.set(record.seq, record);
  return found;
}

/** The last edit that any record speaks of. */
export function lastSeq({ head, snapshots, log }: Stored): number {
  const told = [sound(head), ...snapshots, ...log].map((record) => record?.seq);
  return Math.max(0, ...(told.filter((seq) => Number.isSafeInteger(seq)) as number[]));
}

export function salvage(stored: Stored): Salvage {
  const { head, snapshots, log } = stored;
  const damaged = [...(head ? [head] : []), ...snapshots, ...log].filter((one) => !isSound(one));
  const seq = lastSeq(stored);
  const edits = soundLog(log);
  const newest = Math.max(-1, ...snapshots.map((one) => one.seq));
  const candidates = snapshots
    .filter((one) => isSound(one))
    .sort((a, b) => b.seq - a.seq || a.copy - b.copy);
  let refusal: Fault | undefined;

  // Checking after every edit is slow, and needed only where an edit that is sound makes a plan that is not.
  for (const each of [false, true]) {
    for (const from of candidates) {
      const replayed = replay(from, edits, seq, each);
      if (replayed === undefined) continue;
      if ('refusal' in replayed) {
        refusal ??= replayed.refusal;
        continue;
      }
      const older = from.seq < newest ? { olderSnapshotAt: from.at } : {};
      return { seq, damaged, thin: isThin(stored, from, seq), ...replayed, ...older };
    }
    if (refusal?.code === 'plan-newer') break;
  }
  const none = { seq, lost: seq, unplaced: [], damaged, thin: true };
  return refusal === undefined ? none : { ...none, refusal };
}

function isThin({ head, snapshots, log }: Stored, from: SnapshotRecord, last: number): boolean {
  const copies = new Map<number, number>();
  for (const { seq } of log.filter((one) => isSound(one)))
    copies.set(seq, (copies.get(seq) ?? 0) + 1);
  const held = (after: number, to: number, least: number): boolean => {
    for (let seq = after + 1; seq <= to; seq += 1) if ((copies.get(seq) ?? 0) < least) return false;
    return true;
  };
  const others = snapshots.filter((one) => one !== from && isSound(one) && one.seq <= from.seq);
  const spare = others.some((one) => held(one.seq, from.seq, 1));
  return head === undefined || !spare || !held(from.seq, last, 2);
}

type Replayed =
  | (Required<Pick<Salvage, 'document' | 'lost' | 'unplaced'>> & Pick<Salvage, 'saved'>)
  | { readonly refusal: Fault };

function replay(
  from: SnapshotRecord,
  edits: ReadonlyMap<number, LogRecord>,
  last: number,
  checkEach: boolean,
): Replayed | undefined {
  // Edits are put on the document as it was saved, whatever its schema: only the outcome is brought up to date.
  let saved = parsed(from.text);
  if (saved === undefined) return undefined;
  const unplaced: Salvage['unplaced'][number][] = [];
  let lost = 0;
  for (let seq = from.seq + 1; seq <= last; seq += 1) {
    const record = edits.get(seq);
    const edit = record && editIn(record);
    if (record === undefined || edit === undefined) {
      lost += 1;
      continue;
    }
    const next = withEdit(saved, edit, checkEach);
    if (next === undefined) unplaced.push({ id: record.id, at: record.at, edit });
    else saved = next;
  }
  const read = planFrom(saved, 'the stored plan');
  if (read.document === undefined) return { refusal: read.faults[0]! };
  return {
    document: read.document,
    lost,
    unplaced,
    ...(read.document.schema !== saved.schema && { saved }),
  };
}

function withEdit(document: PlanDocument, edit: Edit, check: boolean): PlanDocument | undefined {
  try {
    const made = applyEdit(document, edit);
    return check && planFrom(made).document === undefined ? undefined : made;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function parsed(text: string): PlanDocument | undefined {
  try {
    return JSON.parse(text) as PlanDocument;
  } catch {
    return undefined;
  }
}

// Plans as the version before stored them: documents as JSON, and edits that each say what they replace. The newest sound
// snapshot and every sound edit after it make the document.
import { applyEdit, type Edit } from '../../src/edits/index.js';
import { planFrom, type Fault, type PlanDocument } from '../../src/model/index.js';
import { editIn } from './earlier-edit.js';
import { isSound, type LogRecord, type SnapshotRecord } from './records.js';

export interface EarlierSalvage {
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
}

export function salvageEarlier(stored: {
  readonly snapshots: readonly SnapshotRecord[];
  readonly log: readonly LogRecord[];
}): EarlierSalvage {
  const snapshots = stored.snapshots.filter((snapshot) => snapshot.kind === undefined);
  const log = stored.log.filter((record) => record.kind === undefined);
  const seqs = [...snapshots, ...log]
    .map((snapshot) => snapshot.seq)
    .filter((seq) => Number.isSafeInteger(seq));
  const seq = Math.max(0, ...seqs);
  const edits = new Map<number, LogRecord>();
  for (const record of log)
    if (!edits.has(record.seq) && isSound(record)) edits.set(record.seq, record);
  const newest = Math.max(-1, ...snapshots.map((snapshot) => snapshot.seq));
  const candidates = snapshots
    .filter((snapshot) => isSound(snapshot))
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
      return { seq, ...replayed, ...older };
    }
    if (refusal?.code === 'plan-newer') break;
  }
  const none = { seq, lost: seq, unplaced: [] };
  return refusal === undefined ? none : { ...none, refusal };
}

type Replayed =
  | Required<Pick<EarlierSalvage, 'document' | 'lost' | 'unplaced'>>
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
  const unplaced: EarlierSalvage['unplaced'][number][] = [];
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
  return { document: read.document, lost, unplaced };
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

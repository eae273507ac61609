// From what is stored to the plan: the newest sound snapshot and every sound update after it. What cannot be trusted
// is counted and handed on, never used and never thrown away.
import type { OpenPlanOptions } from '../../src/plan/index.js';
import { OpenPlan } from '../../src/plan/open.js';
import type { Fault } from '../../src/model/index.js';
import { salvageEarlier, type EarlierSalvage } from './earlier-salvage.js';
import {
  bytesIn,
  isSound,
  sound,
  soundLog,
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
  /** The last update that is or was stored. */
  readonly seq: number;
  /** Absent: nothing could be made of what is stored. */
  readonly plan?: OpenPlan;
  /** Why there is no plan, where a sound one is there that this page cannot take. */
  readonly refusal?: Fault;
  /** `at` of the snapshot that was built on, where a newer one was damaged. Epoch ms. */
  readonly olderSnapshotAt?: number;
  /** Records whose every copy is damaged or gone. */
  readonly lost: number;
  /** Updates that are sound and cannot be made without a lost one; they are kept in the plan until it is found. */
  readonly unplaced: number;
  /** Records whose checksum is wrong. */
  readonly damaged: readonly (HeadRecord | SnapshotRecord | LogRecord)[];
  /** One more damaged record could lose a change: the plan is to be written afresh. */
  readonly thin: boolean;
  /** What was stored by the version before, where the plan was made of that. */
  readonly earlier?: EarlierSalvage;
}

/** The last update that any record speaks of. */
export function lastSeq({ head, snapshots, log }: Stored): number {
  const seqs = [sound(head), ...snapshots, ...log].map((record) => record?.seq);
  return Math.max(0, ...(seqs.filter((seq) => Number.isSafeInteger(seq)) as number[]));
}

/** Whether anything was written by this version, sound or not. */
const isCurrent = ({ snapshots, log }: Stored): boolean =>
  [...snapshots, ...log].some((record) => record.kind !== undefined);

export function salvage(stored: Stored, options: OpenPlanOptions = {}): Salvage {
  const { head, snapshots, log } = stored;
  const damaged = [...(head ? [head] : []), ...snapshots, ...log].filter((item) => !isSound(item));
  const seq = lastSeq(stored);
  const updates = soundLog(log);
  const newest = Math.max(-1, ...snapshots.map((snapshot) => snapshot.seq));
  const candidates = snapshots
    .filter((snapshot) => isSound(snapshot) && snapshot.kind === 'state')
    .sort((a, b) => b.seq - a.seq || a.copy - b.copy);
  for (const from of candidates) {
    const made = replayed(from, updates, seq, options);
    if (!made) continue;
    const older = from.seq < newest ? { olderSnapshotAt: from.at } : {};
    return { seq, damaged, thin: isThin(stored, from, seq), ...made, ...older };
  }
  const none = { seq, lost: seq, unplaced: 0, damaged, thin: true };
  const earlier = salvageEarlier(stored);
  if (!earlier.document) return { ...none, ...(earlier.refusal && { refusal: earlier.refusal }) };
  const after = isCurrent(stored) ? seq - earlier.seq : 0;
  return {
    ...none,
    plan: OpenPlan.of(earlier.document, options),
    lost: earlier.lost + after,
    earlier,
    ...(earlier.olderSnapshotAt !== undefined && { olderSnapshotAt: earlier.olderSnapshotAt }),
  };
}

function isThin({ head, snapshots, log }: Stored, from: SnapshotRecord, last: number): boolean {
  const copies = new Map<number, number>();
  for (const { seq } of log.filter((record) => isSound(record)))
    copies.set(seq, (copies.get(seq) ?? 0) + 1);
  const held = (after: number, to: number, least: number): boolean => {
    for (let seq = after + 1; seq <= to; seq += 1) if ((copies.get(seq) ?? 0) < least) return false;
    return true;
  };
  const others = snapshots.filter(
    (snapshot) =>
      snapshot !== from &&
      snapshot.kind === 'state' &&
      isSound(snapshot) &&
      snapshot.seq <= from.seq,
  );
  const spare = others.some((other) => held(other.seq, from.seq, 1));
  return head === undefined || !spare || !held(from.seq, last, 2);
}

function replayed(
  from: SnapshotRecord,
  updates: ReadonlyMap<number, LogRecord>,
  last: number,
  options: OpenPlanOptions,
): Required<Pick<Salvage, 'plan' | 'lost' | 'unplaced'>> | undefined {
  const state = bytesIn(from);
  if (!state) return undefined;
  const after: Uint8Array[] = [];
  let lost = 0;
  for (let seq = from.seq + 1; seq <= last; seq += 1) {
    const bytes = bytesIn(updates.get(seq));
    if (bytes) after.push(bytes);
    else lost += 1;
  }
  const plan = OpenPlan.from([state, ...after], options);
  return plan && { plan, lost, unplaced: after.filter((update) => !plan.has(update)).length };
}

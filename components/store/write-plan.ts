// One transaction of the store: what others wrote is taken in, what was done here is put after it, all or nothing.
import type { OpenPlan } from '../../src/plan/index.js';
import { toBase64 } from './base64.js';
import { records, type Database } from './database.js';
import { bytesIn, sealed, sound, soundLog } from './records.js';
import { Requests } from './requests.js';
import { keptSnapshots, lastKept, snapshotDue } from './snapshots.js';

export interface Work {
  readonly plan: string;
  readonly open: OpenPlan;
  /** The last update of the store that `open` has; below 0: the store has nothing of the plan yet. */
  readonly seq: number;
  /** What was done here since the last write, as one update; absent: nothing. */
  readonly update?: Uint8Array;
  readonly id: string;
  readonly now: number;
}

/** Origin of what comes from the store: it need not be written again. */
export const fromStore = 'store';

/** The stored plan is there and cannot be followed; what is to be written stays with the caller. */
export class UnreadablePlan extends Error {
  override name = 'UnreadablePlan';
}

const all = ['heads', 'log', 'snapshots'] as const;
type Transaction = ReturnType<typeof readWrite>;

function readWrite(db: Database) {
  // Strict: the promise is kept only once the bytes are with the disk, which is what "saved" is taken to mean.
  return db.transaction(all, 'readwrite', { durability: 'strict' });
}

/** Writes what was done. Returns the last `seq`. Rejects with the browser's error, and then nothing of it is in the store. */
export async function writePlan(db: Database, work: Work): Promise<number> {
  const transaction = readWrite(db);
  // Listened to at once: a transaction that fails early would otherwise be told of as an error nobody took.
  const ended = transaction.done.then(
    () => undefined,
    (error: unknown) => ({ error }),
  );
  let seq: number;
  try {
    seq = await within(transaction, work);
  } catch (error) {
    abort(transaction);
    // The reason of the transaction says more than that of the request it cut short.
    await ended;
    throw transaction.error ?? error;
  }
  const end = await ended;
  if (end !== undefined) throw end.error;
  return seq;
}

async function within(transaction: Transaction, work: Work): Promise<number> {
  const { plan, open, now } = work;
  const head = sound(await transaction.objectStore('heads').get(plan));
  const log = transaction.objectStore('log');
  const snapshots = transaction.objectStore('snapshots');
  const inLog = await log.getAllKeys(records(plan));
  const inSnapshots = await snapshots.getAllKeys(records(plan));
  const last = Math.max(head?.seq ?? 0, ...[...inLog, ...inSnapshots].map(([, seq]) => seq));
  // A plan that is new, or that another tab deleted while there was work on it here, is written whole.
  const whole = inSnapshots.length === 0 || work.seq < 0;
  if (!whole && last > work.seq) await takeOthers(transaction, work, last);

  const puts = new Requests();
  let seq = Math.max(last, work.seq, 0);
  let snapshotSeq = head?.snapshot ?? 0;
  let snapshotAt = head?.snapshotAt ?? 0;
  let bytes = 0;
  if (whole) {
    // The state has all that waits; beside the state of another tab, it merges with it.
    if (inSnapshots.length > 0) seq += 1;
    snapshotSeq = seq;
    snapshotAt = now;
    const text = toBase64(open.state());
    for (const copy of [0, 1]) puts.add(snapshot(copy, text));
  } else if (work.update) {
    seq += 1;
    const text = toBase64(work.update);
    bytes = text.length;
    const { id } = work;
    for (const copy of [0, 1])
      puts.add(log.put(sealed({ plan, seq, copy, id, at: now, text, kind: 'update' })));
  }
  if (!whole && snapshotDue({ edits: seq - snapshotSeq, bytes, snapshotAt, now })) {
    snapshotSeq = seq;
    snapshotAt = now;
    puts.add(snapshot(0, toBase64(open.state())));
    puts.add(prune());
  }
  const { name } = open.document;
  const line = { plan, name, seq, snapshot: snapshotSeq, snapshotAt, at: now };
  puts.add(transaction.objectStore('heads').put(sealed(line)));
  await puts.done();
  return seq;

  function snapshot(copy: number, text: string): Promise<unknown> {
    return snapshots.put(sealed({ plan, seq, copy, at: now, text, kind: 'state' }));
  }

  /** Lets old snapshots go, and the updates that none of the last ones needs. */
  async function prune(): Promise<void> {
    const stored: { seq: number; at: number; copy: number }[] = [];
    for (let at = await snapshots.openCursor(records(plan)); at; at = await at.continue())
      stored.push({ seq: at.value.seq, at: at.value.at, copy: at.value.copy });
    const kept = keptSnapshots(stored, now);
    const gone = stored.filter((item) => !kept.has(item.seq));
    const oldest = [...new Set(stored.map((item) => item.seq))].sort((a, b) => b - a)[lastKept - 1];
    const deletes = new Requests();
    for (const item of gone) deletes.add(snapshots.delete([plan, item.seq, item.copy]));
    if (oldest !== undefined) deletes.add(log.delete(records(plan, 0, oldest)));
    await deletes.done();
  }
}

/** Takes in what is in the store after `seq`, for a tab that only follows. Returns the last `seq`. */
export async function readOthers(db: Database, work: Work): Promise<number> {
  const transaction = db.transaction(all, 'readonly');
  transaction.done.catch(() => undefined);
  const keys = [
    ...(await transaction.objectStore('log').getAllKeys(records(work.plan, work.seq + 1))),
    ...(await transaction.objectStore('snapshots').getAllKeys(records(work.plan, work.seq + 1))),
  ];
  const last = Math.max(work.seq, ...keys.map(([, seq]) => seq));
  if (last > work.seq) await takeOthers(transaction, work, last);
  return last;
}

type AnyTransaction = Transaction | ReturnType<Database['transaction']>;

async function takeOthers(from: AnyTransaction, work: Work, last: number): Promise<void> {
  const { plan, seq, open } = work;
  const transaction = from as Transaction;
  const log = soundLog(await transaction.objectStore('log').getAll(records(plan, seq + 1, last)));
  const updates: Uint8Array[] = [];
  let whole = true;
  for (let at = seq + 1; at <= last; at += 1) {
    const update = bytesIn(log.get(at));
    if (update) updates.push(update);
    else whole = false;
  }
  // Let go in favour of a snapshot, or damaged: what is in a snapshot is merged like any update.
  if (!whole) {
    const snapshots = await transaction.objectStore('snapshots').getAll(records(plan));
    const sure = snapshots.sort((a, b) => b.seq - a.seq).find((snapshot) => bytesIn(snapshot));
    const state = bytesIn(sure);
    if (state) updates.unshift(state);
    for (let at = Math.max(seq, sure?.seq ?? 0) + 1; at <= last; at += 1)
      if (!bytesIn(log.get(at)))
        throw new UnreadablePlan(`The stored plan cannot be read up to change ${at}.`);
  }
  for (const update of updates) {
    const { refused } = open.incoming(update, fromStore);
    if (refused !== undefined) throw new UnreadablePlan(refused);
  }
}

function abort(transaction: Transaction): void {
  try {
    transaction.abort();
  } catch {
    // It has ended by itself, which is all that was wanted.
  }
}

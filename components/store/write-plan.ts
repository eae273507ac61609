// One transaction of the store: what others wrote is read, what was done here is put after it, all or nothing.
import {
  advance,
  editBetween,
  shownOf,
  type Edit,
  type Line,
  type Pending,
} from '../../src/edits/index.js';
import { records, type Database } from './database.js';
import { editIn, sealed, sound, type LogRecord } from './records.js';
import { Requests } from './requests.js';
import { lastSeq, salvage, soundLog } from './salvage.js';
import { keptSnapshots, lastKept, snapshotDue } from './snapshots.js';

/** An edit that is in the store. */
export interface Agreed {
  readonly id: string;
  readonly edit: Edit;
}

export interface Written {
  /** In the order of the store: what others wrote since `seq`, then what was written now. */
  readonly agreed: readonly Agreed[];
  /** Ids of edits that are in the list of those set aside now. */
  readonly aside: ReadonlySet<string>;
  readonly seq: number;
}

export interface Work {
  readonly plan: string;
  readonly line: Line;
  /** The last edit of the store that `line.base` has. */
  readonly seq: number;
  /** Refused earlier, not yet in the store. */
  readonly aside: readonly Pending[];
  readonly now: number;
}

/** The stored plan is there and cannot be followed; what is to be written stays with the caller. */
export class UnreadablePlan extends Error {
  override name = 'UnreadablePlan';
}

const all = ['heads', 'log', 'snapshots', 'aside'] as const;
type Transaction = ReturnType<typeof readWrite>;

function readWrite(db: Database) {
  // Strict: the promise is kept only once the bytes are with the disk, which is what "saved" is taken to mean.
  return db.transaction(all, 'readwrite', { durability: 'strict' });
}

/** Writes all that is pending. Rejects with the browser's error, and then nothing of it is in the store. */
export async function writePlan(db: Database, work: Work): Promise<Written> {
  const transaction = readWrite(db);
  // Listened to at once: a transaction that fails early would otherwise be told of as an error nobody took.
  const ended = transaction.done.then(
    () => undefined,
    (error: unknown) => ({ error }),
  );
  let written: Written;
  try {
    written = await within(transaction, work);
  } catch (error) {
    abort(transaction);
    // The reason of the transaction says more than that of the request it cut short.
    await ended;
    throw transaction.error ?? error;
  }
  const end = await ended;
  if (end !== undefined) throw end.error;
  return written;
}

async function within(transaction: Transaction, work: Work): Promise<Written> {
  const { plan, now } = work;
  const head = sound(await transaction.objectStore('heads').get(plan));
  const log = transaction.objectStore('log');
  const snapshots = transaction.objectStore('snapshots');
  const inLog = await log.getAllKeys(records(plan));
  const inSnapshots = await snapshots.getAllKeys(records(plan));
  const last = Math.max(head?.seq ?? 0, ...[...inLog, ...inSnapshots].map(([, seq]) => seq));
  // A plan that is new, or that another tab deleted while there was work on it here, is written whole.
  const whole = inSnapshots.length === 0;

  const theirs = whole || last <= work.seq ? [] : await othersEdits(transaction, work, last);
  const merged = mergeLine(work.line, theirs);
  const { line } = merged;
  const refused = [...work.aside, ...merged.refused];
  const puts = new Requests();
  let seq = Math.max(last, work.seq);
  let snapshotSeq = whole ? seq : (head?.snapshot ?? 0);
  let snapshotAt = whole ? now : (head?.snapshotAt ?? 0);
  if (whole) for (const copy of [0, 1]) puts.add(snapshot(line.base, copy));

  let bytes = 0;
  for (const { id, at, edit } of line.pending) {
    seq += 1;
    const text = JSON.stringify(edit);
    bytes += text.length;
    for (const copy of [0, 1]) puts.add(log.put(sealed({ plan, seq, copy, id, at, text })));
  }
  for (const { id, at, edit } of refused) {
    const record = sealed({ plan, id, at, text: JSON.stringify(edit) });
    puts.add(transaction.objectStore('aside').put(record));
  }
  const shown = shownOf(line);
  if (snapshotDue({ edits: seq - snapshotSeq, bytes, snapshotAt, now })) {
    snapshotSeq = seq;
    snapshotAt = now;
    puts.add(snapshot(shown, 0));
    puts.add(prune());
  }
  const line1 = { plan, name: shown.name, seq, snapshot: snapshotSeq, snapshotAt, at: now };
  puts.add(transaction.objectStore('heads').put(sealed(line1)));
  await puts.done();

  return {
    agreed: [...theirs, ...line.pending],
    aside: new Set(refused.map((one) => one.id)),
    seq,
  };

  function snapshot(document: Line['base'], copy: number): Promise<unknown> {
    return snapshots.put(sealed({ plan, seq, copy, at: now, text: JSON.stringify(document) }));
  }

  /** Lets old snapshots go, and the edits that none of the last ones needs. */
  async function prune(): Promise<void> {
    const stored: { seq: number; at: number; copy: number }[] = [];
    for (let at = await snapshots.openCursor(records(plan)); at; at = await at.continue())
      stored.push({ seq: at.value.seq, at: at.value.at, copy: at.value.copy });
    const kept = keptSnapshots(stored, now);
    const gone = stored.filter((one) => !kept.has(one.seq));
    const oldest = [...new Set(stored.map((one) => one.seq))].sort((a, b) => b - a)[lastKept - 1];
    const deletes = new Requests();
    for (const one of gone) deletes.add(snapshots.delete([plan, one.seq, one.copy]));
    if (oldest !== undefined) deletes.add(log.delete(records(plan, 0, oldest)));
    await deletes.done();
  }
}

/** The line with others' edits taken in, in order. */
export function mergeLine(
  from: Line,
  theirs: readonly Agreed[],
): { line: Line; refused: Pending[] } {
  let line = from;
  const refused: Pending[] = [];
  for (const one of theirs) {
    const step = advance(line, one);
    line = step.line;
    refused.push(...step.refused);
  }
  return { line, refused };
}

/** What is in the store after `seq`, for a tab that only follows. */
export async function readOthers(
  db: Database,
  work: Work,
): Promise<Pick<Written, 'agreed' | 'seq'>> {
  const transaction = db.transaction(all, 'readonly');
  transaction.done.catch(() => undefined);
  const keys = await transaction.objectStore('log').getAllKeys(records(work.plan, work.seq + 1));
  const last = Math.max(work.seq, ...keys.map(([, seq]) => seq));
  if (last === work.seq) return { agreed: [], seq: work.seq };
  return { agreed: await othersEdits(transaction, work, last), seq: last };
}

type AnyTransaction = Transaction | ReturnType<Database['transaction']>;

async function othersEdits(
  transaction: AnyTransaction,
  work: Work,
  last: number,
): Promise<Agreed[]> {
  const { plan, seq, line } = work;
  const store = (transaction as Transaction).objectStore('log');
  const log = soundLog((await store.getAll(records(plan, seq + 1, last))) as LogRecord[]);
  const found: Agreed[] = [];
  for (let at = seq + 1; at <= last; at += 1) {
    const record = log.get(at);
    const edit = record && editIn(record);
    // Let go in favour of a snapshot, or damaged: the way there is lost, the document may not be.
    if (record === undefined || edit === undefined)
      return [await theirDocument(transaction as Transaction, plan, line)];
    if (edit.changes.some((change) => 'part' in change && change.part[0] === 'schema'))
      throw new DOMException('The plan was brought up to a newer schema.', 'VersionError');
    found.push({ id: record.id, edit });
  }
  try {
    mergeLine({ base: line.base, pending: [] }, found);
    return found;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return [await theirDocument(transaction as Transaction, plan, line)];
  }
}

async function theirDocument(transaction: Transaction, plan: string, line: Line): Promise<Agreed> {
  const stored = {
    head: await transaction.objectStore('heads').get(plan),
    snapshots: await transaction.objectStore('snapshots').getAll(records(plan)),
    log: await transaction.objectStore('log').getAll(records(plan)),
  };
  const { document, lost } = salvage(stored);
  if (document === undefined || lost > 0)
    throw new UnreadablePlan(`The stored plan cannot be read up to edit ${lastSeq(stored)}.`);
  return { id: '', edit: editBetween(line.base, document, 'Changes made in another tab') };
}

function abort(transaction: Transaction): void {
  try {
    transaction.abort();
  } catch {
    // It has ended by itself, which is all that was wanted.
  }
}

// What the store holds. Every record carries a checksum over all that it says, its own place included, so that damage
// and mix-ups are found when it is read.
import { crc32 } from '../../src/model/crc32.js';
import { fromBase64 } from './base64.js';

interface Sealed {
  readonly check: number;
}

/** Changes of a plan that were written together. Written twice (`copy` 0 and 1): until the next snapshot nothing else holds them. */
export interface LogRecord extends Sealed {
  readonly plan: string;
  /** 1 for the first of the plan, rising by 1. */
  readonly seq: number;
  readonly copy: number;
  readonly id: string;
  /** When it was made, epoch ms. */
  readonly at: number;
  /** The update in base64; without `kind`, an edit of the version before as JSON. */
  readonly text: string;
  readonly kind?: 'update';
}

/** The whole plan as it is after update `seq`. */
export interface SnapshotRecord extends Sealed {
  readonly plan: string;
  readonly seq: number;
  readonly copy: number;
  readonly at: number;
  /** The state in base64; without `kind`, a document of the version before as JSON. */
  readonly text: string;
  readonly kind?: 'state';
}

/** One line a plan, for the list. */
export interface HeadRecord extends Sealed {
  readonly plan: string;
  readonly name: string;
  /** The last update. */
  readonly seq: number;
  /** The last snapshot, and when it was written. */
  readonly snapshot: number;
  readonly snapshotAt: number;
  readonly at: number;
}

/** An edit of the version before that met another tab's: kept until a person has looked at it. */
export interface AsideRecord extends Sealed {
  readonly plan: string;
  readonly id: string;
  readonly at: number;
  readonly text: string;
}

/** Records that could not be trusted, as they were found. */
export interface DamagedRecord {
  readonly plan: string;
  readonly at: number;
  readonly text: string;
}

/** The file that a person last saved a plan to. */
export interface HandleRecord {
  readonly plan: string;
  readonly handle: FileSystemFileHandle;
  /** The file's own time of change after our last write, epoch ms. */
  readonly modified: number;
}

/** The record with its checksum. */
export function sealed<const T extends Record<string, string | number>>(record: T): T & Sealed {
  return { ...record, check: checkOf(record) };
}

/** What was found of a record that was read: it is never changed, asked about often, and may hold a whole plan. */
const found = new WeakMap<object, boolean>();

/** Whether the record is what was written. */
export function isSound(record: unknown): boolean {
  if (typeof record !== 'object' || record === null || !('check' in record)) return false;
  const known = found.get(record);
  if (known !== undefined) return known;
  const { check, ...rest } = record;
  const sure = check === checkOf(rest);
  found.set(record, sure);
  return sure;
}

/** The record where it is sound. */
export function sound<T extends Sealed>(record: T | undefined): T | undefined {
  return isSound(record) ? record : undefined;
}

/** The bytes of a record that holds some; undefined where it is of the version before, or damaged. */
export function bytesIn(record: LogRecord | SnapshotRecord | undefined): Uint8Array | undefined {
  return record?.kind === undefined || !isSound(record) ? undefined : fromBase64(record.text);
}

/** The log by `seq`, each the first sound one of its copies. */
export function soundLog(log: readonly LogRecord[]): Map<number, LogRecord> {
  const first = new Map<number, LogRecord>();
  for (const record of log)
    if (!first.has(record.seq) && isSound(record)) first.set(record.seq, record);
  return first;
}

// No cryptographic digest: what is guarded against is damage, not an attacker, who could write a digest too; it is there
// on pages without a secure origin; and it is done at once, where a promise that is not the database's own would let its
// transaction close.
function checkOf(record: object): number {
  const entries = Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1));
  return crc32(new TextEncoder().encode(JSON.stringify(entries)));
}

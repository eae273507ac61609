// The parts of a workbook, taken out of its zip archive with care: nothing is unpacked before its directory is checked,
// and nothing is given out whose length or checksum differs from what the directory says.
import { Inflate } from 'fflate';
import { crc32 } from '../../model/crc32.js';
import type { Problem } from '../../model/index.js';
import { problemOf } from '../parse/parsed.js';
import type { Damage, Excess } from '../problems/workbook-problems.js';

/** An archive is not opened. */
export class ArchiveRefused extends Error {
  override name = 'ArchiveRefused';
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.code);
    this.problem = problem;
  }
}

const MB = 1024 * 1024;

/** What a workbook of tables stays far below, and an archive made to fill the memory does not. */
export const archiveLimits = {
  entries: 200,
  entryBytes: 64 * MB,
  totalBytes: 128 * MB,
  ratio: 200,
} as const;

/** Below this a part may be packed as tightly as it likes: a sheet of blank cells is. */
const smallPart = MB;

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly at: number;
}

const end = 0x06054b50;
const entryMark = 0x02014b50;
const localMark = 0x04034b50;

/**
 * The wanted parts of an archive by name. Parts that nobody wants are never unpacked, but count in the limits.
 *
 * @throws {ArchiveRefused} When the archive is damaged, beyond the limits, or says one thing and holds another.
 * @see APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16 (from memory).
 */
export function unpack(
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
): ReadonlyMap<string, Uint8Array> {
  const entries = directoryOf(bytes);
  checkLimits(entries);
  const parts = new Map<string, Uint8Array>();
  for (const entry of entries)
    if (wanted(entry.name)) parts.set(entry.name, contentOf(bytes, entry));
  return parts;
}

const damaged = (what: Damage, part = ''): ArchiveRefused =>
  new ArchiveRefused(problemOf('workbook-damaged', { what, part }));

function directoryOf(bytes: Uint8Array): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let last = bytes.length - 22;
  const first = Math.max(0, last - 65_535);
  while (last >= first && view.getUint32(last, true) !== end) last -= 1;
  if (last < first) throw damaged('list-missing');
  const count = view.getUint16(last + 10, true);
  if (count > archiveLimits.entries) throw tooMuch({ parts: count });
  const entries: Entry[] = [];
  const seen = new Set<string>();
  let at = view.getUint32(last + 16, true);
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== entryMark)
      throw damaged('list-broken');
    const nameLength = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    if ((view.getUint16(at + 8, true) & 1) === 1)
      throw new ArchiveRefused(problemOf('workbook-locked'));
    if (seen.has(name)) throw damaged('part-twice', name);
    seen.add(name);
    entries.push({
      name,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

const tooMuch = (what: Excess): ArchiveRefused =>
  new ArchiveRefused(problemOf('workbook-too-large', { what }));

function checkLimits(entries: readonly Entry[]): void {
  let total = 0;
  for (const { name, packed, size } of entries) {
    const one = { part: name, mb: Math.ceil(size / MB) };
    if (size > archiveLimits.entryBytes) throw tooMuch(one);
    if (size > smallPart && size > packed * archiveLimits.ratio)
      throw tooMuch({ ...one, fromKb: Math.ceil(packed / 1024) });
    total += size;
  }
  if (total > archiveLimits.totalBytes) throw tooMuch({ mb: Math.ceil(total / MB) });
}

/** Packed bytes are fed in pieces, so that a part which lies about its size is stopped soon after it passes it. */
const piece = 16 * 1024;

function contentOf(bytes: Uint8Array, entry: Entry): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { name, at, packed, size } = entry;
  if (at + 30 > bytes.length || view.getUint32(at, true) !== localMark)
    throw damaged('part-missing', name);
  const from = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (from + packed > bytes.length) throw damaged('part-broken', name);
  const raw = bytes.subarray(from, from + packed);
  const out = entry.method === 0 ? stored(raw, entry) : inflated(raw, entry);
  if (out.length !== size || crc32(out) !== entry.crc) throw damaged('part-altered', name);
  return out;
}

function stored(raw: Uint8Array, { name, size }: Entry): Uint8Array {
  if (raw.length !== size) throw damaged('part-length', name);
  return raw;
}

function inflated(raw: Uint8Array, { name, method, size }: Entry): Uint8Array {
  if (method !== 8) throw damaged('part-packing', name);
  const out = new Uint8Array(size);
  let length = 0;
  let over = false;
  const stream = new Inflate((chunk) => {
    if (length + chunk.length > size) over = true;
    else out.set(chunk, length);
    length += chunk.length;
  });
  try {
    for (let at = 0; at < raw.length && !over; at += piece) {
      stream.push(raw.subarray(at, at + piece), at + piece >= raw.length);
    }
  } catch {
    throw damaged('part-unpacked', name);
  }
  if (over) throw damaged('part-longer', name);
  return out.subarray(0, length);
}

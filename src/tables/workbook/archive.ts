// The parts of a workbook, taken out of its zip archive with care: nothing is unpacked before its directory is checked,
// and nothing is given out whose length or checksum differs from what the directory says.
import { Inflate } from 'fflate';
import { crc32 } from '../../model/crc32.js';

/** Why an archive is not opened, in words for the person who gave it. */
export class ArchiveRefused extends Error {
  override name = 'ArchiveRefused';
  readonly code: string;
  readonly mend: string;

  constructor(code: string, message: string, mend: string) {
    super(message);
    this.code = code;
    this.mend = mend;
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

const damaged = (what: string): ArchiveRefused =>
  new ArchiveRefused(
    'workbook-damaged',
    `The file is not a whole workbook: ${what}.`,
    'Save it again as .xlsx, or save the sheet as CSV.',
  );

function directoryOf(bytes: Uint8Array): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let last = bytes.length - 22;
  const first = Math.max(0, last - 65_535);
  while (last >= first && view.getUint32(last, true) !== end) last -= 1;
  if (last < first) throw damaged('its list of parts is missing');
  const count = view.getUint16(last + 10, true);
  if (count > archiveLimits.entries) throw tooMuch(`it holds ${count} parts`);
  const entries: Entry[] = [];
  const seen = new Set<string>();
  let at = view.getUint32(last + 16, true);
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== entryMark)
      throw damaged('its list of parts breaks off');
    const nameLength = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    if ((view.getUint16(at + 8, true) & 1) === 1) throw locked();
    if (seen.has(name)) throw damaged(`it holds "${name}" twice`);
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

const locked = (): ArchiveRefused =>
  new ArchiveRefused(
    'workbook-locked',
    'The workbook is locked with a password.',
    'Save it without the password, or save the sheet as CSV.',
  );

const tooMuch = (what: string): ArchiveRefused =>
  new ArchiveRefused(
    'workbook-too-large',
    `The workbook is not opened: ${what}, more than a workbook of tables needs.`,
    'Keep only the sheets that are needed, or save the sheet as CSV.',
  );

function checkLimits(entries: readonly Entry[]): void {
  let total = 0;
  for (const { name, packed, size } of entries) {
    const shown = `${Math.ceil(size / MB)} MB`;
    if (size > archiveLimits.entryBytes) throw tooMuch(`its part "${name}" unpacks to ${shown}`);
    if (size > smallPart && size > packed * archiveLimits.ratio)
      throw tooMuch(`its part "${name}" unpacks to ${shown} from ${Math.ceil(packed / 1024)} kB`);
    total += size;
  }
  if (total > archiveLimits.totalBytes) throw tooMuch(`it unpacks to ${Math.ceil(total / MB)} MB`);
}

/** Packed bytes are fed in pieces, so that a part which lies about its size is stopped soon after it passes it. */
const piece = 16 * 1024;

function contentOf(bytes: Uint8Array, entry: Entry): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { name, at, packed, size } = entry;
  if (at + 30 > bytes.length || view.getUint32(at, true) !== localMark)
    throw damaged(`its part "${name}" is not where the list says`);
  const from = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (from + packed > bytes.length) throw damaged(`its part "${name}" breaks off`);
  const raw = bytes.subarray(from, from + packed);
  const out = entry.method === 0 ? stored(raw, entry) : inflated(raw, entry);
  if (out.length !== size || crc32(out) !== entry.crc)
    throw damaged(`its part "${name}" does not match its checksum`);
  return out;
}

function stored(raw: Uint8Array, { name, size }: Entry): Uint8Array {
  if (raw.length !== size) throw damaged(`its part "${name}" is longer or shorter than it says`);
  return raw;
}

function inflated(raw: Uint8Array, { name, method, size }: Entry): Uint8Array {
  if (method !== 8) throw damaged(`its part "${name}" is packed in a way not known here`);
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
    throw damaged(`its part "${name}" cannot be unpacked`);
  }
  if (over) throw damaged(`its part "${name}" holds more than it says`);
  return out.subarray(0, length);
}

export type Encoding = 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** The text of a file, without a byte order mark, and the encoding it was taken to be in. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: Encoding;
}

/**
 * Reads bytes as text: by their byte order mark; as UTF-16 where every other byte of a good part is zero; as UTF-8
 * where they are valid but for a few bytes, each of which becomes `\uFFFD`; else as windows-1252, in which every byte means
 * something.
 */
export function decodeBytes(bytes: Uint8Array): DecodedText {
  const encoding = encodingOf(bytes);
  if (encoding) return { text: decode(bytes, encoding), encoding };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8' };
  } catch {
    return mostlyUtf8(bytes)
      ? { text: new TextDecoder('utf-8').decode(bytes), encoding: 'utf-8' }
      : { text: decode(bytes, 'windows-1252'), encoding: 'windows-1252' };
  }
}

/** Whether more letters beyond ASCII are written as UTF-8 writes them than not: then a few bytes are damaged. */
function mostlyUtf8(bytes: Uint8Array): boolean {
  const text = new TextDecoder('utf-8').decode(bytes);
  let whole = 0;
  let broken = 0;
  for (const sign of text.match(/[^\0-\u007f]/gu) ?? []) {
    if (sign === '\ufffd') broken += 1;
    else whole += 1;
  }
  return whole > 0 && whole >= broken;
}

/** The text of a file read in a chosen encoding, without a byte order mark. */
export function decodeAs(bytes: Uint8Array, encoding: Encoding): DecodedText {
  const marked = encoding === 'utf-8' && encodingOf(bytes) === 'utf-8-bom';
  return { text: decode(bytes, marked ? 'utf-8-bom' : encoding), encoding };
}

function decode(bytes: Uint8Array, encoding: Encoding): string {
  if (encoding === 'windows-1252') return western(bytes);
  if (encoding === 'utf-16be') return new TextDecoder('utf-16le').decode(swapped(bytes));
  return new TextDecoder(encoding === 'utf-8-bom' ? 'utf-8' : encoding).decode(bytes);
}

// Bytes 80 to 9F of windows-1252, https://encoding.spec.whatwg.org/index-windows-1252.txt; the others are their own
// code points. Written out here since the TextDecoder of some versions of Node reads these bytes as Latin-1.
const upper =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

function western(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) {
    parts.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  }
  return parts.join('').replace(/[\u0080-\u009f]/g, (sign) => upper[sign.charCodeAt(0) - 0x80]!);
}

function encodingOf(bytes: Uint8Array): Encoding | undefined {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8-bom';
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return zeroPattern(bytes);
}

/** Latin text in UTF-16 has a zero in nearly every second byte; text in any other encoding has none at all. */
function zeroPattern(bytes: Uint8Array): Encoding | undefined {
  const seen = Math.min(bytes.length - (bytes.length % 2), 4096);
  if (seen < 4) return undefined;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < seen; at += 2) {
    if (bytes[at] === 0) even += 1;
    if (bytes[at + 1] === 0) odd += 1;
  }
  const many = seen / 2 / 3;
  if (odd > many && even * 10 < odd) return 'utf-16le';
  if (even > many && odd * 10 < even) return 'utf-16be';
  return undefined;
}

// Not every TextDecoder was built with utf-16be; little-endian is everywhere.
function swapped(bytes: Uint8Array): Uint8Array {
  const out = new Uint8Array(bytes.length);
  for (let at = 0; at + 1 < bytes.length; at += 2) {
    out[at] = bytes[at + 1]!;
    out[at + 1] = bytes[at]!;
  }
  return out;
}

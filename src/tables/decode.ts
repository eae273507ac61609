export type Encoding = 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** The text of a file, without a byte order mark, and the encoding it was taken to be in. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: Encoding;
}

/**
 * Reads bytes as text: by their byte order mark; as UTF-16 where every other byte of a good part is zero; as UTF-8
 * where they are valid; else as windows-1252, in which every byte means something.
 */
export function decodeBytes(bytes: Uint8Array): DecodedText {
  const encoding = encodingOf(bytes);
  if (encoding) return { text: decode(bytes, encoding), encoding };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8' };
  } catch {
    return { text: decode(bytes, 'windows-1252'), encoding: 'windows-1252' };
  }
}

function decode(bytes: Uint8Array, encoding: Encoding): string {
  if (encoding === 'utf-16be') return new TextDecoder('utf-16le').decode(swapped(bytes));
  return new TextDecoder(encoding === 'utf-8-bom' ? 'utf-8' : encoding).decode(bytes);
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

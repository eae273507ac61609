// CRC-32 (ISO-HDLC), not a cryptographic digest: what is guarded against is damage, not an attacker, who could write a
// digest too; it is there on pages without a secure origin; and it is done at once, where a promise that is not the
// database's own would let its transaction close.

const table = Uint32Array.from({ length: 256 }, (_one, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** Checksum of the text's UTF-8 bytes, 0 to 2^32 - 1. `crc32('123456789')` is `0xcbf43926`, its published check value. */
export function crc32(text: string): number {
  let value = 0xffffffff;
  for (const byte of new TextEncoder().encode(text)) {
    value = (value >>> 8) ^ table[(value ^ byte) & 0xff]!;
  }
  return (value ^ 0xffffffff) >>> 0;
}

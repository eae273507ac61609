import { crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../../src/model/crc32.js';

describe('crc32', () => {
  it('has its published check value', () => {
    // Check value of CRC-32/ISO-HDLC for the text 123456789: the catalogue of parametrised CRC algorithms, from memory.
    expect(crc32(Buffer.from('123456789'))).toBe(0xcbf43926);
    expect(crc32(Buffer.from(''))).toBe(0);
  });

  it.runIf(typeof zlibCrc32 === 'function')('agrees with zlib on any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(crc32(bytes)).toBe(zlibCrc32(bytes));
      }),
    );
  });
});

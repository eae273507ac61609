import { describe, expect, it } from 'vitest';
import { jsonPieces, Listed } from '../../../src/cli/print/listed.js';

describe('an answer that is made while it is written', () => {
  const rows = Array.from({ length: 2000 }, (_, at) => ({ at, text: 'x'.repeat(at % 90) }));
  const answer = (list: unknown): object => ({
    first: 1,
    none: undefined,
    list,
    last: ['a', null],
  });

  it('is the text that it would be as a whole', () => {
    const pieces = [...jsonPieces(answer(new Listed(() => rows)))];
    expect(pieces.length).toBeGreaterThan(1);
    expect(pieces.join('')).toBe(JSON.stringify(answer(rows)));
  });

  it('is so with nothing in the list, and read as a whole', () => {
    expect([...jsonPieces(answer(new Listed(() => [])))].join('')).toBe(JSON.stringify(answer([])));
    expect(JSON.stringify(new Listed(() => rows))).toBe(JSON.stringify(rows));
  });

  it('has no more of the list made than has been written', () => {
    let made = 0;
    const list = new Listed(function* () {
      for (const row of rows) {
        made += 1;
        yield row;
      }
    });
    jsonPieces({ list }).next();
    expect(made).toBeLessThan(rows.length);
  });
});

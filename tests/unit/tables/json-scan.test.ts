import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scanJson } from '../../../src/tables/json/json-scan.js';

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe('a look through JSON', () => {
  it('finds no fault in what JSON.stringify writes', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom(0, 2, '\t'), (value, indent) => {
        expect(scanJson(JSON.stringify(value, undefined, indent))).toEqual({});
      }),
    );
  });

  it('calls broken exactly what JSON.parse refuses', () => {
    const soup = fc.string({
      unit: fc.constantFrom(
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '"',
        'a',
        '\\',
        '1',
        '0',
        '-',
        '.',
        'e',
        ' ',
        'null',
        '"k":',
      ),
    });
    const damaged = fc
      .tuple(fc.json(), fc.nat(), fc.string({ maxLength: 2 }))
      .map(([text, at, put]) => {
        const place = at % (text.length + 1);
        return text.slice(0, place) + put + text.slice(place + 1);
      });
    fc.assert(
      fc.property(fc.oneof(soup, damaged), (text) => {
        expect(scanJson(text).brokenAt === undefined).toBe(isJson(text));
      }),
      { numRuns: 3000 },
    );
  });

  it.each([
    ['{"a": 1,}', 8],
    ['{"a" 1}', 5],
    ['[1, 2', 5],
    ['{} x', 3],
    ['"open', 0],
    ['', 0],
  ])('says where %j breaks', (text, brokenAt) => {
    expect(scanJson(text)).toEqual({ brokenAt });
  });

  it('finds a key twice in one object, not in two', () => {
    expect(scanJson('[{"a":1},{"a":{"a":2}}]')).toEqual({});
    expect(scanJson('{"a":1,"\\u0061":2}')).toEqual({ twice: { key: 'a', at: 7 } });
  });

  it('calls nesting beyond all sense broken and does not fall over', () => {
    expect(scanJson('['.repeat(100_000)).brokenAt).toBe(201);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fromTabText,
  looksLikeHeadings,
  toTableMarkup,
  toTabText,
} from '../../../components/sheet/edit/clipboard.js';

const block = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }))
  .chain(([rows, columns]) => {
    const cell = fc.oneof(
      fc.string(),
      fc.string({ unit: 'binary' }),
      fc.constantFrom('', '"', '""', '\t', '\n', '\r', '\r\n', 'a"b', '"a', '007', '="x"'),
    );
    return fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), {
      minLength: rows,
      maxLength: rows,
    });
  });

describe('cells on the clipboard', () => {
  it('come back exactly as they were copied', () => {
    fc.assert(
      fc.property(block, (cells) => {
        expect(fromTabText(toTabText(cells))).toEqual(cells);
      }),
    );
  });

  // RFC 4180, section 2, rules 5 to 7 (quotes round cells with breaks, quotes doubled), with tabs for commas.
  it.each([
    [
      'a\tb\nc\td\n',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    ['"a\tb"\t"c\r\nd"', [['a\tb', 'c\r\nd']]],
    ['"say ""no"""', [['say "no"']]],
    ['0012\t-5', [['0012', '-5']]],
    ['6" pipe', [['6" pipe']]],
    ['"never closed\tx', [['"never closed', 'x']]],
    [
      'a\tb\nc',
      [
        ['a', 'b'],
        ['c', ''],
      ],
    ],
    ['', [['']]],
  ])('%j is read', (text, cells) => {
    expect(fromTabText(text)).toEqual(cells);
  });

  it('goes out as markup with nothing that could run', () => {
    expect(toTableMarkup([['<b>&"', 'a\nb']])).toBe(
      '<table><tr><td>&lt;b&gt;&amp;&quot;</td><td>a<br>b</td></tr></table>',
    );
  });

  it('tells a pasted row of headings from a row of data', () => {
    expect(looksLikeHeadings(['Window', 'start'], ['window', 'Start'])).toBe(true);
    expect(looksLikeHeadings(['start', 'window'], ['window', 'start', 'end'])).toBe(true);
    expect(looksLikeHeadings(['N1', 'start'], ['window', 'start'])).toBe(false);
    expect(looksLikeHeadings(['', ''], ['window', 'start'])).toBe(false);
  });
});

// Text of the command line on screens of every width.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnsOf, layOut } from '../../../src/cli/print/layout.js';
import { table } from '../../../src/cli/print/blocks.js';
import { wrapped } from '../../../src/cli/print/wrapped.js';

const word = fc.string({ unit: fc.constantFrom(...'abcdefgh012:;.'), minLength: 1, maxLength: 14 });
const cell = fc.array(word, { maxLength: 12 }).map((words) => words.join(' '));
const rows = fc
  .integer({ min: 1, max: 8 })
  .chain((count) =>
    fc.tuple(
      fc.array(cell, { minLength: count, maxLength: count }),
      fc.array(fc.array(cell, { minLength: count, maxLength: count }), { maxLength: 6 }),
    ),
  );
const signs = (text: string): string => [...text.replace(/[\s-]/g, '')].sort().join('');

describe('text laid out', () => {
  it('is never wider than the screen, and no sign of a cell is lost', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 20, max: 130 }), ([heads, cells], width) => {
        const lines = layOut([table(heads, cells), ...heads], width).split('\n');
        expect(lines.filter((line) => line.length > width)).toEqual([]);
        const out = signs(lines.join(''));
        for (const text of cells.flat()) expect(contains(out, signs(text))).toBe(true);
      }),
    );
  });

  it('is as it is where it fits, and where nothing says how wide the screen is', () => {
    const block = table(
      ['window', 'minutes'],
      [
        ['N1', '480'],
        ['N12', '60'],
      ],
    );
    const natural = 'window  minutes\n------  -------\nN1          480\nN12          60';
    expect(layOut([block])).toBe(natural);
    expect(layOut([block], 15)).toBe(natural);
  });

  it('wraps the words of the widest column first, and keeps every column', () => {
    const reasons = 'short by 2 h 35; fits if the end moves to 08:05 or the crane comes at once';
    expect(layOut([table(['package', 'fit', 'reasons'], [['Deck', 'no', reasons]])], 44)).toBe(
      [
        'package  fit  reasons',
        '-------  ---  ------------------------------',
        'Deck     no   short by 2 h 35; fits if the',
        '              end moves to 08:05 or the',
        '              crane comes at once',
      ].join('\n'),
    );
  });

  it('gives each row lines of its own where even that is too wide', () => {
    const heads = ['window', 'booked end', 'margin', 'verdict', ''];
    expect(
      layOut([table(heads, [['N1', 'Sun 7 Mar 2027 06:00', '45 min', 'held', 'ok']])], 30),
    ).toBe('N1\n  booked end Sun 7 Mar 2027\n  06:00; margin 45 min;\n  verdict held; ok');
  });

  it('sets what is said of a name beside it, or under it where that is too narrow', () => {
    const block = { terms: [['--windows FILE', 'when the track can be had']] as const, indent: 2 };
    expect(layOut([block], 45)).toBe('  --windows FILE  when the track can be had');
    expect(layOut([block], 34)).toBe('  --windows FILE\n    when the track can be had');
  });

  // Unicode Standard Annex 11: East Asian wide signs take two columns of a terminal.
  it('counts signs that take two columns', () => {
    expect(wrapped('線路 閉鎖 工事', 10)).toEqual(['線路 閉鎖', '工事']);
  });

  it('lets nothing steer the terminal, before it counts', () => {
    const out = layOut([table(['a'], [['x\u001b[31my\nz']])], 40);
    expect(out.split('\n').at(-1)).toBe('x\\u001b[31my z');
  });

  it('takes the width of COLUMNS, else that of the terminal, else none', () => {
    expect(columnsOf({ isTTY: true, columns: 100 }, '72')).toBe(72);
    expect(columnsOf({ isTTY: true, columns: 100 }, undefined)).toBe(100);
    expect(columnsOf({ isTTY: true, columns: 100 }, 'wide')).toBe(100);
    expect(columnsOf({}, undefined)).toBeUndefined();
  });
});

/** Whether all signs of a sorted text are in another. */
function contains(all: string, some: string): boolean {
  let at = 0;
  for (const sign of some) {
    at = all.indexOf(sign, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

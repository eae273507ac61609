import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnGroups, roomFor } from '../../../components/sheet/paper/print-columns.js';

const rooms = fc.array(fc.integer({ min: 10, max: 200 }), { minLength: 1, maxLength: 60 });

describe('columns on sheets of paper', () => {
  it('stand all on one where they have room', () => {
    expect(columnGroups([100, 100, 100], 30, 330)).toEqual([[0, 1, 2]]);
    expect(columnGroups([100, 100, 101], 30, 330)).toEqual([
      [0, 1],
      [0, 2],
    ]);
    expect(columnGroups([50], 30, 330)).toEqual([[0]]);
    expect(columnGroups([], 30, 330)).toEqual([]);
  });

  it('are each on exactly one sheet, in order, after the first; none is over-full but by a single one', () => {
    fc.assert(
      fc.property(rooms, (wide) => {
        const groups = columnGroups(wide, 30, 400);
        expect(groups.every((group) => group[0] === 0)).toBe(true);
        expect(groups.flatMap((group) => group.slice(1))).toEqual([...wide.keys()].slice(1));
        for (const group of groups) {
          const used = group.reduce((sum, at) => sum + wide[at]!, 30);
          expect(used <= 400 || group.length <= 2).toBe(true);
        }
      }),
    );
  });

  it('are as wide as their longest word, up to a length at which it is broken', () => {
    expect(roomFor(['to', 'Up;Down'])).toBe(roomFor(['Down']));
    expect(roomFor(['preparation of the bridge'])).toBe(roomFor(['preparation']));
    expect(roomFor(['x'.repeat(500)])).toBe(roomFor(['x'.repeat(24)]));
  });
});

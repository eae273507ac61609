import { describe, expect, it } from 'vitest';
import { VerdictIndex } from '../../../components/fit/verdict-index.js';
import type { PackageSummary } from '../../../src/engine/types.js';
import type { FitVerdict } from '../../../src/planner/fit/types.js';
import type { AccessWindow } from '../../../src/model/index.js';

const packages = ['Deck', 'Track'].map((id) => ({ id })) as PackageSummary[];
const windows = ['N1', 'N2', 'N3'].map((id) => ({ id })) as AccessWindow[];
const verdict = (pack: string, window: string): FitVerdict => ({
  package: pack,
  window,
  fits: true,
  spareMinutes: 0,
  reasons: [],
  placements: [],
});
const all = packages.flatMap((pack) => windows.map((window) => verdict(pack.id, window.id)));

describe('VerdictBook', () => {
  it('finds verdicts in any order, and the same objects', () => {
    for (const fits of [all, [...all].reverse(), [all[5]!, all[0]!, ...all.slice(1, 5)]]) {
      const book = new VerdictIndex(fits, packages, windows);
      for (const [row, pack] of packages.entries())
        for (const [column, window] of windows.entries())
          expect(book.at(row, column)).toBe(
            all.find((item) => item.package === pack.id && item.window === window.id),
          );
    }
  });

  it('answers that none came for a pair that is missing or does not exist', () => {
    const book = new VerdictIndex(all.slice(0, 4), packages, windows);
    expect(book.at(1, 0)).toBe(all[3]);
    expect(book.at(1, 1)).toBeUndefined();
    expect(book.at(2, 0)).toBeUndefined();
    expect(new VerdictIndex([], packages, windows).at(0, 0)).toBeUndefined();
  });

  it('tells apart names that run together', () => {
    const odd = [verdict('A', 'B,C'), verdict('A,B', 'C')];
    const book = new VerdictIndex(
      odd,
      [{ id: 'A,B' }, { id: 'A' }] as PackageSummary[],
      [{ id: 'C' }, { id: 'B,C' }] as AccessWindow[],
    );
    expect(book.at(0, 0)).toBe(odd[1]);
    expect(book.at(1, 1)).toBe(odd[0]);
    expect(book.at(0, 1)).toBeUndefined();
  });
});

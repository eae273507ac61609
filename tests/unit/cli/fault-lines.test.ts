import { describe, expect, it } from 'vitest';
import { faultLines } from '../../../src/cli/print/fault-lines.js';
import type { Fault } from '../../../src/model/index.js';

const fault = (line: number, more: Partial<Fault> = {}): Fault => ({
  code: 'window-not-known',
  severity: 'warning',
  file: 'trains.csv',
  line,
  column: 'window',
  sentence: { key: 'window-not-known', given: { name: `N${line}` } },
  ...more,
});

describe('the lines that tell of faults', () => {
  it('tell each error by itself, however many there are', () => {
    const errors = Array.from({ length: 40 }, (_, at) => fault(at + 2, { severity: 'error' }));
    expect(faultLines(errors)).toHaveLength(40);
    expect(faultLines(errors)[39]).toBe(
      'error: trains.csv, line 41, column "window": There is no window "N41". Mend: Name a window of the file, or leave the cell blank.',
    );
  });

  it('gather warnings of one cause after the third, and say where each stands', () => {
    const lines = [2, 3, 4, 5, 6, 9, 8, 12].map((line) => fault(line));
    const other = fault(7, { column: 'weight' });
    expect(faultLines([...lines.slice(0, 5), other, ...lines.slice(5)])).toEqual([
      ...[2, 3, 4].map(
        (line) =>
          `warning: trains.csv, line ${line}, column "window": There is no window "N${line}". Mend: Name a window of the file, or leave the cell blank.`,
      ),
      'warning: trains.csv, column "window": 5 more like these, on lines 5-6, 8-9, 12.',
      'warning: trains.csv, line 7, column "weight": There is no window "N7". Mend: Name a window of the file, or leave the cell blank.',
    ]);
  });

  it('leave three and fewer as they are', () => {
    expect(faultLines([2, 3, 4].map((line) => fault(line)))).toHaveLength(3);
    expect(faultLines([])).toEqual([]);
  });

  it('stop after 500 and count the rest', () => {
    const errors = Array.from({ length: 502 }, (_, at) => fault(at, { severity: 'error' }));
    expect(faultLines(errors).slice(500)).toEqual([
      '2 more, 2 of them errors. Mend these first, then run it again.',
    ]);
  });
});

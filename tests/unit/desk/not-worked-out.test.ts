import { describe, expect, it } from 'vitest';
import { tellLedger } from '../../../components/desk/frame/explain-picked.js';
import { recompute } from '../../../src/engine/recompute.js';
import { aDocument, tableOf } from '../../helpers/documents.js';

const document = aDocument('One night', {
  windows: tableOf('windows.csv', 'window,start,end\nW1,2027-03-01 23:00,2027-03-02 05:00'),
  work: tableOf('work.csv', 'package,activity,minutes\nP,A,60'),
});

describe('what fits a window, where no verdict was worked out', () => {
  const results = recompute(document);

  it('is not told as none that fits', () => {
    const told = tellLedger({ ...results, fits: [] }, 'W1', 'usable')!;
    expect(told.sentence).toContain('is not worked out');
    expect(told.sentence).not.toMatch(/\b0 of/);
  });

  it('is told with a count where they were', () => {
    expect(tellLedger(results, 'W1', 'usable')!.sentence).toContain('1 of 1 package');
  });
});

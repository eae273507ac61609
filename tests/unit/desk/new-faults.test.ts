import { beforeAll, describe, expect, it } from 'vitest';
import type { Fault } from '../../../src/model/index.js';
import { createInlineEngine } from '../../../src/engine/index.js';
import { loadProblems } from '../../../components/shared/problem-words.js';
import { newFaultsText } from '../../../components/desk/files/new-faults.js';
import { defaultStrings } from '../../../components/desk/strings.js';
import { aDocument, tableOf } from '../../helpers/documents.js';

/** The faults of a plan with so many units done of 36. */
async function faultsOf(done: number): Promise<readonly Fault[]> {
  const windows = tableOf(
    'windows.csv',
    'window,start,end,status\nW1,2027-03-02 23:00,2027-03-03 05:00,confirmed',
  );
  const work = tableOf(
    'work.csv',
    `package,activity,title,units,done,minutes per unit\nTrack,T1,Panels,36,${done},10`,
  );
  const engine = createInlineEngine();
  return (await engine.recompute(aDocument('One night', { windows, work }))).faults;
}

const newFaults = (before: readonly Fault[], after: readonly Fault[]): string =>
  newFaultsText(before, after, defaultStrings);

beforeAll(() => loadProblems('en'));

describe('what a change leaves out of the plan', () => {
  it('is told with its numbers: 99 units in place of 36', async () => {
    const told = newFaults(await faultsOf(9), await faultsOf(99));
    expect(told).toContain('work.csv, line 2');
    expect(told).toContain('99 units are done of 36');
  });

  it('is not told where the change leaves nothing out, mends, or leaves the old faults', async () => {
    const [good, bad] = [await faultsOf(9), await faultsOf(99)];
    expect(newFaults(good, await faultsOf(10))).toBe('');
    expect(newFaults(bad, good)).toBe('');
    expect(newFaults(bad, bad)).toBe('');
  });
});

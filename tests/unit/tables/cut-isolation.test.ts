import { describe, expect, it } from 'vitest';
import { isolationCut, planFrom, type PlanResult } from '../../../src/tables/index.js';

const read = (start: string, end: string, isolation: string): PlanResult =>
  planFrom({
    windows: {
      file: 'w',
      content: `window,start,end,isolation\nW,${start},${end},${isolation}\n`,
    },
  });
const [was, until] = ['2027-03-27 22:50', '2027-03-28 09:00'];
const window = read(was, until, 'OV1 [23:30-07:50];OV2;OV3 [23:00-23:20]').plan.windows[0]!;
const clock = (at: number): string => new Date(at).toISOString().slice(5, 16);

describe('cutting a window with isolation times', () => {
  it('clips the times, so that the window stays in the plan with no fault', () => {
    const cut = isolationCut(window, '2027-03-28 00:30', '2027-03-28 06:00')!;
    expect(cut.lost).toEqual(['OV3']);
    const { plan, faults } = read('2027-03-28 00:30', '2027-03-28 06:00', cut.text);
    expect(faults).toEqual([]);
    expect(
      plan.windows[0]!.isolation.map(({ section, during }) => [
        section,
        during && [clock(during.start), clock(during.end)],
      ]),
    ).toEqual([
      ['OV1', ['03-28T00:30', '03-28T05:00']],
      ['OV2', undefined],
    ]);
  });

  it('says nothing where no time is touched or the new times cannot be read', () => {
    expect(isolationCut(window, was, until)).toBeUndefined();
    expect(isolationCut(window, 'soon', until)).toBeUndefined();
    expect(isolationCut(window, '2027-04-03 22:50', '2027-04-04 09:00')).toBeUndefined();
    const plain = read(was, until, 'OV1;OV2').plan.windows[0]!;
    expect(isolationCut(plain, '2027-03-28 00:30', until)).toBeUndefined();
  });
});

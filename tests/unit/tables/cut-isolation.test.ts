import { describe, expect, it } from 'vitest';
import { deadTimes } from '../../../src/model/index.js';
import {
  isolationCut,
  isolationLike,
  planFrom,
  type PlanResult,
} from '../../../src/tables/index.js';

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

/** By section, the times that a plan makes of its one window, in UTC; no times where it has none of its own. */
const timesOf = ({ plan }: PlanResult): unknown[] =>
  plan.windows[0]!.isolation.map((section) => [
    section.section,
    ...(section.during
      ? deadTimes(section, plan.windows[0]!, plan.windows[0]!.zone).map(
          ({ start, end }) => `${clock(start)} ${clock(end)}`,
        )
      : []),
  ]);

describe('cutting a window with isolation times', () => {
  it('clips the times, so that the window stays in the plan with no fault', () => {
    const cut = isolationCut(window, '2027-03-28 00:30', '2027-03-28 06:00')!;
    expect(cut.lost).toEqual(['OV3']);
    expect(cut.cut.map((item) => item.section)).toEqual(['OV1']);
    const after = read('2027-03-28 00:30', '2027-03-28 06:00', cut.text!);
    expect(after.faults).toEqual([]);
    expect(timesOf(after)).toEqual([['OV1', '03-28T00:30 03-28T05:00'], ['OV2']]);
  });

  it('says nothing where no time is touched or the new times cannot be read', () => {
    expect(isolationCut(window, was, until)).toBeUndefined();
    expect(isolationCut(window, 'soon', until)).toBeUndefined();
    expect(isolationCut(window, '2027-04-03 22:50', '2027-04-04 09:00')).toEqual({
      cut: [],
      lost: [],
    });
    const plain = read(was, until, 'OV1;OV2').plan.windows[0]!;
    expect(isolationCut(plain, '2027-03-28 00:30', until)).toBeUndefined();
  });

  describe('of several nights', () => {
    const [from, to] = ['2027-07-23 20:00', '2027-07-26 09:00'];
    const long = read(
      from,
      to,
      'OV1 [23:30-07:50]; OV2 [2027-07-23 23:30 - 2027-07-24 07:50]; OV2 [2027-07-25 22:00 - 2027-07-26 04:00]',
    ).plan.windows[0]!;

    it('leaves times of each day as they stand and clips each dated stretch', () => {
      const cut = isolationCut(long, '2027-07-24 01:00', '2027-07-25 23:00')!;
      expect(cut.text).toContain('OV1 [23:30-07:50]; OV2 [2027-07-24 01:00');
      const after = read('2027-07-24 01:00', '2027-07-25 23:00', cut.text!);
      expect(after.faults.filter((fault) => fault.severity === 'error')).toEqual([]);
      expect(timesOf(after)).toEqual([
        ['OV1', '07-24T00:00 07-24T06:50', '07-24T22:30 07-25T06:50'],
        ['OV2', '07-24T00:00 07-24T06:50', '07-25T21:00 07-25T22:00'],
      ]);
      expect(cut.cut.map((item) => item.section)).toEqual(['OV1', 'OV2']);
    });

    it('writes the nights that are left with their dates where the window becomes short', () => {
      const cut = isolationCut(long, from, '2027-07-24 06:00')!;
      const after = read(from, '2027-07-24 06:00', cut.text!);
      expect(after.faults).toEqual([]);
      expect(timesOf(after)).toEqual([
        ['OV1', '07-23T22:30 07-24T05:00'],
        ['OV2', '07-23T22:30 07-24T05:00'],
      ]);
    });

    it('needs no change of the cell where only times of each day are cut', () => {
      const nightly = read(from, to, 'OV1 [23:30-07:50]; OV9').plan.windows[0]!;
      const cut = isolationCut(nightly, from, '2027-07-25 20:00')!;
      expect(cut.text).toBeUndefined();
      expect(cut.cut.map((item) => item.section)).toEqual(['OV1']);
    });
  });

  describe('moved to another night, or copied for a window like it', () => {
    const dated = read(
      '2027-03-20 20:00',
      '2027-03-21 09:00',
      'OV1 [2027-03-20 23:30 - 2027-03-21 07:50]; OV2 [23:30-07:50]; OV3',
    ).plan.windows[0]!;
    // The night of 27 March is one hour shorter: the clocks stand at the same times all the same.
    const [start, end] = ['2027-03-27 20:00', '2027-03-28 09:00'];

    it('takes the dates of its isolation along by the clock, as many days as its start moves', () => {
      for (const made of [isolationCut(dated, start, end), isolationLike(dated, start, end)]) {
        const after = read(start, end, made!.text!);
        expect(after.faults.filter((fault) => fault.severity === 'error')).toEqual([]);
        expect(timesOf(after)).toEqual([
          ['OV1', '03-27T23:30 03-28T06:50'],
          ['OV2', '03-27T23:30 03-28T06:50'],
          ['OV3'],
        ]);
        expect(made).toMatchObject({ cut: [], lost: [] });
      }
    });

    it('clips what lies outside, and says which section is dead for less or not at all', () => {
      const made = isolationLike(dated, '2027-03-27 20:00', '2027-03-28 03:00')!;
      expect(made.cut.map((item) => item.section)).toEqual(['OV1', 'OV2']);
      expect(timesOf(read('2027-03-27 20:00', '2027-03-28 03:00', made.text!))[0]).toEqual([
        'OV1',
        '03-27T23:30 03-28T02:00',
      ]);
      const day = isolationLike(dated, '2027-03-27 10:00', '2027-03-27 18:00')!;
      expect([day.lost, day.text]).toEqual([['OV1', 'OV2'], 'OV3']);
    });
  });
});

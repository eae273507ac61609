import { describe, expect, it } from 'vitest';
import {
  appendEntry,
  handback,
  readShiftLog,
  shiftLogFile,
  shiftState,
  type ShiftEntry,
  type ShiftEvent,
  type ShiftLog,
} from '../../../src/risk/index.js';
import {
  anActivity,
  aPlan,
  at,
  aWindow,
  placed,
  rulesWith,
  whole,
} from '../../helpers/handback-plan.js';

// 480 minutes booked; 30 to protect, four units of 50 (40 to 80), 30 to inspect (25 to 60), a margin of 45.
const units = anActivity(
  'LAY',
  {
    kind: 'units',
    units: 4,
    done: 0,
    minutesPerUnit: 50,
    setUpMinutes: 0,
    makeSafeMinutes: 0,
    spread: { low: 40, high: 80 },
  },
  { madeGoodBy: 'none' },
);
const clips = anActivity('CLIPS', whole(60), { mayWait: true, after: [] });
const plan = aPlan([units, clips], { rules: rulesWith({ handback: { chance: 0.95 } }) });
const placements = [placed('LAY', 30, 230, 4), placed('CLIPS', 30, 90)];

function entry(id: string, minutes: number, event: ShiftEvent, corrects?: string): ShiftEntry {
  return {
    ...{ id, at: at(minutes), enteredAt: at(minutes), by: 'R.T.', event },
    ...(corrects !== undefined && { corrects }),
  };
}

const begun: ShiftLog = [
  entry('1', 0, { kind: 'granted' }),
  entry('2', 30, { kind: 'step-finished', step: 'Place protection' }),
  entry('3', 90, { kind: 'units-done', activity: 'LAY', units: 1 }),
];

const look = (log: ShiftLog, minutes: number, window = aWindow()) =>
  handback(plan, window, placements, {
    ...{ seed: 7, runs: 4000, at: at(minutes) },
    actuals: shiftState(log, at(minutes)).actuals,
  });

describe('an earlier end that the shift has agreed to', () => {
  const agreed = appendEntry(begun, entry('4', 100, { kind: 'end-agreed', end: at(300) }));

  it('counts from the moment of its entry, for margin, cut-offs, chance and advice', () => {
    expect(look(agreed, 99)).toEqual(look(begun, 99));
    const before = look(begun, 120);
    const after = look(agreed, 120);
    expect([after.bookedEnd, after.bookedBefore]).toEqual([at(300), at(480)]);
    expect(before.bookedBefore).toBeNull();
    // Three hours less margin, whatever is left to do.
    expect(after.live!.marginLeftMinutes).toBe(before.live!.marginLeftMinutes - 180);
    expect(after.cutOffs.map((cutOff) => cutOff.latestStart)).toEqual(
      before.cutOffs.map((cutOff) => cutOff.latestStart - 180 * 60_000),
    );
    expect(after.simulation.handbackMinutes).toEqual(before.simulation.handbackMinutes);
    const share = (result: typeof after, minutes: number): number =>
      result.simulation.handbackMinutes.filter((value) => value <= minutes).length / 4000;
    expect(after.simulation.outlook.onTime.probability).toBe(share(before, 300));
    expect(before.live!.advice.say).toBe('carry-on');
    expect(after.live!.advice.say).not.toBe('carry-on');
    expect(after.live!.verdict).not.toBe('held');
  });

  it('comes to what the same window comes to where it was booked so', () => {
    const after = look(agreed, 120);
    const booked = look(begun, 120, aWindow({ end: at(300) }));
    expect({ ...after, bookedBefore: null, inputsStamp: '' }).toEqual({
      ...booked,
      inputsStamp: '',
    });
  });

  it('is moved and taken back by a correction', () => {
    const moved = appendEntry(agreed, entry('5', 110, { kind: 'end-agreed', end: at(420) }, '4'));
    expect(look(moved, 120).bookedEnd).toBe(at(420));
    const undone = appendEntry(agreed, entry('5', 110, { kind: 'struck-out' }, '4'));
    expect(look(undone, 120)).toEqual({
      ...look(begun, 120),
      inputsStamp: look(undone, 120).inputsStamp,
    });
    expect(look(undone, 120).bookedBefore).toBeNull();
  });

  it('that is no earlier changes nothing, and says so', () => {
    const later = appendEntry(begun, entry('4', 100, { kind: 'end-agreed', end: at(500) }));
    const { bookedEnd, live } = look(later, 120);
    expect(bookedEnd).toBe(at(480));
    expect(live!.doubts.map((doubt) => doubt.code)).toEqual(['agreed-too-late']);
  });

  it('is what a handback is early or late against, and what an asking is held against', () => {
    const back = appendEntry(agreed, entry('5', 310, { kind: 'handed-back' }));
    expect(look(back, 315).live!.advice.why).toBe('Handed back 10 min after the agreed end.');
    const asked = appendEntry(agreed, entry('5', 105, { kind: 'asked-back', by: at(330) }));
    // Nobody needs to be told of an asking for a time after the end.
    expect(look(asked, 120).live!.askedBack).toBeNull();
  });

  it('goes through the file of a log', () => {
    expect(readShiftLog(shiftLogFile('W1', agreed)).log).toEqual(agreed);
  });
});

import { describe, expect, it } from 'vitest';
import {
  appendEntry,
  grantStep,
  shiftState,
  type ShiftEntry,
  type ShiftEvent,
  type ShiftLog,
} from '../../../src/risk/index.js';
import { at } from '../../helpers/handback-plan.js';

const entry = (id: string, minute: number, event: ShiftEvent, corrects?: string): ShiftEntry => ({
  id,
  at: at(minute),
  enteredAt: at(minute + 2),
  by: 'Person in charge',
  event,
  ...(corrects !== undefined && { corrects }),
});
const logOf = (...entries: ShiftEntry[]): ShiftLog => entries.reduce<ShiftLog>(appendEntry, []);

describe('a shift log', () => {
  it('derives what has been seen of each step and activity', () => {
    const state = shiftState(
      logOf(
        entry('1', 5, { kind: 'granted' }),
        entry('2', 6, { kind: 'step-started', step: 'Place protection' }),
        entry('3', 40, { kind: 'step-finished', step: 'Place protection' }),
        entry('4', 45, { kind: 'activity-started', activity: 'PILE' }),
        entry('5', 90, { kind: 'units-done', activity: 'PILE', units: 1 }),
        entry('6', 130, { kind: 'units-done', activity: 'PILE', units: 2 }),
      ),
    );
    expect(state.grantedAt).toBe(at(5));
    expect(state.actuals).toEqual([
      { step: grantStep, finishedAt: at(5) },
      { step: 'Place protection', startedAt: at(6), finishedAt: at(40) },
      { activity: 'PILE', startedAt: at(45), unitsDone: 2, unitsAt: at(130) },
    ]);
    expect(state.faults).toEqual([]);
  });

  it('keeps a corrected entry and counts the last correction only', () => {
    const log = logOf(
      entry('1', 45, { kind: 'activity-started', activity: 'CUT' }),
      entry('2', 50, { kind: 'activity-started', activity: 'CUT' }, '1'),
      entry('3', 55, { kind: 'activity-started', activity: 'CUT' }, '2'),
    );
    const state = shiftState(log);
    expect(log).toHaveLength(3);
    expect(state.actuals).toEqual([{ activity: 'CUT', startedAt: at(55) }]);
    expect(state.standing[0]!.replaced.map((item) => item.id)).toEqual(['1', '2']);
  });

  it('takes back what is struck out', () => {
    const state = shiftState(
      logOf(
        entry('1', 45, { kind: 'activity-finished', activity: 'CUT' }),
        entry('2', 46, { kind: 'struck-out' }, '1'),
      ),
    );
    expect(state.actuals).toEqual([]);
    expect(state.struckOut.map((item) => item.id)).toEqual(['1']);
  });

  it('does not change the log it is given', () => {
    const before = logOf(entry('1', 1, { kind: 'granted' }));
    appendEntry(before, entry('2', 2, { kind: 'note', text: 'Rain' }));
    expect(before).toHaveLength(1);
  });

  it('refuses a taken id, a correction of nothing, and a second correction of one entry', () => {
    const log = logOf(entry('1', 1, { kind: 'granted' }), entry('2', 2, { kind: 'granted' }, '1'));
    expect(() => appendEntry(log, entry('1', 3, { kind: 'granted' }))).toThrow(RangeError);
    expect(() => appendEntry(log, entry('3', 3, { kind: 'granted' }, '9'))).toThrow(/9/);
    expect(() => appendEntry(log, entry('3', 3, { kind: 'granted' }, '1'))).toThrow(/2/);
    expect(() => appendEntry(log, entry('3', 3, { kind: 'struck-out' }))).toThrow(RangeError);
  });

  it('orders by when things happened, not by when they were written down', () => {
    const state = shiftState(
      logOf(
        entry('late', 90, { kind: 'units-done', activity: 'PILE', units: 2 }),
        entry('early', 50, { kind: 'units-done', activity: 'PILE', units: 1 }),
      ),
    );
    expect(state.actuals[0]).toMatchObject({ unitsDone: 2, unitsAt: at(90) });
    expect(state.faults).toEqual([]);
  });

  it('reports what cannot be so', () => {
    const codes = (log: ShiftLog): string[] => shiftState(log).faults.map((fault) => fault.code);
    expect(
      codes(
        logOf(
          entry('1', 50, { kind: 'units-done', activity: 'PILE', units: 3 }),
          entry('2', 60, { kind: 'units-done', activity: 'PILE', units: 1 }),
        ),
      ),
    ).toEqual(['fewer-units']);
    expect(
      codes(
        logOf(
          entry('1', 50, { kind: 'activity-finished', activity: 'CUT' }),
          entry('2', 60, { kind: 'activity-started', activity: 'CUT' }),
        ),
      ),
    ).toEqual(['finish-before-start']);
    expect(codes(logOf({ ...entry('1', 50, { kind: 'granted' }), enteredAt: at(40) }))).toEqual([
      'entered-before-it-happened',
    ]);
  });

  it('can be read as it stood at an earlier moment', () => {
    const log = logOf(
      entry('1', 45, { kind: 'activity-started', activity: 'CUT' }),
      entry('2', 150, { kind: 'activity-finished', activity: 'CUT' }),
    );
    expect(shiftState(log, at(100)).actuals).toEqual([{ activity: 'CUT', startedAt: at(45) }]);
  });
});

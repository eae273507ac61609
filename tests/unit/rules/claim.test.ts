// What a step's row says where it shares its time with other steps or finds no room, to the minute.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { rowsOfSteps, rowsOfStops, type Claim } from '../../../src/rules/claim.js';

const claim = (rule: string, from: number, to: number): Claim => ({
  rule: { text: rule },
  kind: 'lead-in',
  why: { text: 'As asked.' },
  start: from * MINUTE,
  end: to * MINUTE,
});
const within = { start: 0, end: 100 * MINUTE };
const told = (...claims: readonly Claim[]): [string, number, number, number, string][] =>
  rowsOfSteps(claims, within).map((row) => [
    row.rule,
    row.start / MINUTE,
    row.end / MINUTE,
    row.minutes,
    row.why,
  ]);

describe('steps side by side', () => {
  it('that follow one another say no more than their reason', () => {
    expect(told(claim('A', 0, 30), claim('B', 30, 50))).toEqual([
      ['A', 0, 30, 30, 'As asked.'],
      ['B', 30, 50, 20, 'As asked.'],
    ]);
  });

  it('are deducted once, and the second says how much it shares, were it a minute', () => {
    expect(told(claim('A', 0, 30), claim('B', 29, 50))[1]).toEqual([
      'B',
      30,
      50,
      20,
      'As asked. 1 min of it runs beside other steps and is deducted once.',
    ]);
    expect(told(claim('A', 0, 30), claim('B', 10, 30))).toEqual([
      ['A', 0, 30, 30, 'As asked.'],
      ['B', 30, 30, 0, 'As asked. All of it runs beside other steps: nothing more is deducted.'],
    ]);
  });

  it('of a minute that runs beside others is all of it', () => {
    expect(told(claim('A', 0, 30), claim('B', 10, 11))[1]![4]).toBe(
      'As asked. All of it runs beside other steps: nothing more is deducted.',
    );
  });

  it('that take no time say so', () => {
    expect(told(claim('A', 0, 30), claim('B', 30, 30))[1]).toEqual([
      'B',
      30,
      30,
      0,
      'As asked. It takes no time.',
    ]);
  });

  it('for which the window is too short say what they need and have', () => {
    expect(told(claim('A', 90, 120))).toEqual([
      [
        'A',
        90,
        100,
        10,
        'As asked. Needs 30 min, has 10 min: the window is too short for its deductions.',
      ],
    ]);
    expect(told(claim('A', 0, 100), claim('B', 130, 140))[1]!.slice(1)).toEqual([
      100,
      100,
      0,
      'As asked. Needs 10 min, has 0 min: the window is too short for its deductions.',
    ]);
    expect(told(claim('A', -20, 10))[0]!.slice(1, 4)).toEqual([0, 10, 10]);
  });

  it('with nothing of their own stand where the row over them ends', () => {
    const rows = told(claim('A', 0, 30), claim('B', 5, 20), claim('C', 30, 40));
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      ['A', 0, 30],
      ['C', 30, 40],
      ['B', 30, 30],
    ]);
    expect(told(claim('A', 10, 30), claim('B', 10, 20))[1]!.slice(0, 3)).toEqual(['B', 10, 10]);
  });
});

describe('stops', () => {
  it('have rows for what of them lies within, and none otherwise', () => {
    const stops = [claim('A', -10, 10), claim('B', 5, 20), claim('C', 100, 120)];
    const rows = rowsOfStops(stops, within);
    expect(rows.map((row) => [row.rule, row.start / MINUTE, row.end / MINUTE, row.why])).toEqual([
      ['A', 0, 10, 'As asked.'],
      ['B', 10, 20, 'As asked.'],
    ]);
  });
});

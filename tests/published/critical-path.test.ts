// Critical path networks with published results. Where a page gives no late times or floats they were worked out from
// its durations and predecessors by the same definitions: total float = late start - early start; free float =
// earliest start of the followers, or the end, - early finish. Each network names its page and how sure it is.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../src/calendar/index.js';
import { allocate } from '../../src/planner/search/index.js';
import { activity, plan, window } from '../helpers/plan-builders.js';

interface Times {
  readonly id: string;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  readonly totalFloat: number;
  readonly freeFloat: number;
  readonly critical: boolean;
  /** How far the finish slips before the project's date is missed, by pushing on. */
  readonly slip: number;
}

/**
 * A network planned as work in one window as long as the project, with the project's end as the date of its last work.
 * `A 6` or `B 2 A,C`: id, duration, what it waits for; `;` between activities. A dummy of no duration is its links.
 */
function planned(text: string, length: number): readonly Times[] {
  const rows = text.split(';').map((item) => {
    const [id, duration, after] = item.trim().split(' ');
    return { id: id!, duration: Number(duration), after: after?.split(',') ?? [] };
  });
  const waited = new Set(rows.flatMap((row) => row.after));
  const found = allocate(
    plan({
      windows: [window('P', 0, length)],
      activities: rows.map(({ id, duration, after }) =>
        activity(id, duration, { after, ...(waited.has(id) ? {} : { keyDate: length }) }),
      ),
    }),
    { first: 'finish', clock: () => 0 },
  );
  expect(found.certificate).toMatchObject({ objective: length, proven: true });
  return found.floats.map((float) => ({
    id: float.activity,
    earlyStart: float.earliestStart / MINUTE,
    earlyFinish: float.earliestFinish / MINUTE,
    lateStart: float.latestStart / MINUTE,
    lateFinish: float.latestFinish / MINUTE,
    totalFloat: float.totalFloatMinutes,
    freeFloat: float.freeFloatMinutes,
    critical: float.critical,
    slip: float.slipMinutes!,
  }));
}

/** `A ES EF LS LF TF FF`, one a line. */
function rows(text: string, length: number): string[] {
  return planned(text, length).map((item) =>
    [
      item.id,
      item.earlyStart,
      item.earlyFinish,
      item.lateStart,
      item.lateFinish,
      item.totalFloat,
      item.freeFloat,
    ].join(' '),
  );
}

function floats(
  text: string,
  length: number,
  of: 'totalFloat' | 'freeFloat' | 'slip',
): Record<string, number> {
  return Object.fromEntries(
    planned(text, length)
      .filter((item) => item[of] > 0)
      .map((item) => [item.id, item[of]]),
  );
}

function critical(text: string, length: number): string {
  return planned(text, length)
    .filter((item) => item.critical)
    .map((item) => item.id)
    .join(' ');
}

describe('floats of a plan against published networks', () => {
  // "Example 1", studylib document 8378728: durations, predecessors, early and late times and slack read there
  // (it heads the early finish "latest finish"); free floats worked out.
  it('agrees with the seven-activity example of 16 hours', () => {
    const text = 'A 6; B 2 A; C 2 A; D 3 B; E 4 D,F; F 2 C; G 1 E';
    expect(rows(text, 16)).toEqual([
      'A 0 6 0 6 0 0',
      'B 6 8 6 8 0 0',
      'C 6 8 7 9 1 0',
      'D 8 11 8 11 0 0',
      'E 11 15 11 15 0 0',
      'F 8 10 9 11 1 1',
      'G 15 16 15 16 0 0',
    ]);
  });

  // Taylor, Introduction to Management Science, chapter 8 problem 1, published solutions: times read there; free
  // floats worked out.
  it('agrees with a network of seven arcs and 20 weeks', () => {
    const text = '1-2 7; 1-3 10; 2-4 6 1-2; 3-4 5 1-3; 3-5 4 1-3; 4-5 3 2-4,3-4; 5-6 2 3-5,4-5';
    expect(rows(text, 20)).toEqual([
      '1-2 0 7 2 9 2 0',
      '1-3 0 10 0 10 0 0',
      '2-4 7 13 9 15 2 2',
      '3-4 10 15 10 15 0 0',
      '3-5 10 14 14 18 4 4',
      '4-5 15 18 15 18 0 0',
      '5-6 18 20 18 20 0 0',
    ]);
  });

  // Taylor, chapter 8 problem 2, published solutions: times read there; free floats worked out. 4-5 is a dummy.
  it('agrees with a network of 38 weeks that has an activity of no duration', () => {
    const text =
      '1-2 8; 1-3 10; 1-4 9; 2-5 6 1-2; 2-6 4 1-2; 3-5 5 1-3; 4-5 0 1-4; 4-7 7 1-4; 5-7 12 2-5,3-5,4-5; 5-8 15 2-5,3-5,4-5; 6-9 18 2-6; 7-8 4 4-7,5-7; 8-9 7 5-8,7-8';
    expect(rows(text, 38)).toEqual([
      '1-2 0 8 1 9 1 0',
      '1-3 0 10 0 10 0 0',
      '1-4 0 9 6 15 6 0',
      '2-5 8 14 9 15 1 1',
      '2-6 8 12 16 20 8 0',
      '3-5 10 15 10 15 0 0',
      '4-5 9 9 15 15 6 6',
      '4-7 9 16 20 27 11 11',
      '5-7 15 27 15 27 0 0',
      '5-8 15 30 16 31 1 1',
      '6-9 12 30 20 38 8 8',
      '7-8 27 31 27 31 0 0',
      '8-9 31 38 31 38 0 0',
    ]);
  });

  // bizhelp24, "Critical path analysis part 2": durations, earliest starts, total and free floats read there (a
  // published check of free float); predecessors inferred from them.
  it('agrees with a network of 11 weeks and its free floats', () => {
    const text = 'A 1; B 3 A; C 2 A; D 3 B; E 3 C; F 2 D,E; G 2 F';
    expect(critical(text, 11)).toBe('A B D F G');
    expect(floats(text, 11, 'totalFloat')).toEqual({ C: 1, E: 1 });
    expect(floats(text, 11, 'freeFloat')).toEqual({ E: 1 });
  });

  // Slide set 3283910, building a house: times read there; predecessors inferred, floats worked out.
  it('agrees with a network of 41 days for a house', () => {
    const text = 'A 4; B 6 A; C 3 A; D 6 B; E 14 D; F 5 C; G 2 E,F; H 2 G; I 3 G; J 4 H,I; K 2 J';
    const found = rows(text, 41);
    expect(found).toContain('C 4 7 22 25 18 0');
    expect(found).toContain('F 7 12 25 30 18 18');
    expect(found).toContain('H 32 34 33 35 1 1');
    expect(critical(text, 41)).toBe('A B D E G I J K');
  });

  // Vanhoucke, Measuring Time (2009), page 18, as an open manual page cites it: durations and successors read there;
  // results worked out.
  it('agrees with a network of ten activities and 16 time units', () => {
    const text =
      'a2 4; a3 9; a4 1; a5 4 a2; a6 5 a4; a7 1 a6; a8 7 a7; a9 8 a5; a10 3 a3; a11 3 a7';
    expect(critical(text, 16)).toBe('a2 a5 a9');
    expect(floats(text, 16, 'totalFloat')).toEqual({
      a3: 4,
      a10: 4,
      a4: 2,
      a6: 2,
      a7: 2,
      a8: 2,
      a11: 6,
    });
    expect(floats(text, 16, 'freeFloat')).toEqual({ a10: 4, a8: 2, a11: 6 });
  });

  // Hendrickson, Project Management for Construction, chapter 10, nine activities: network from memory, results
  // worked out again.
  it('agrees with a network of nine activities and 30 days', () => {
    const text = 'A 4; B 3; C 8 A; D 7 A; E 9 B,C; F 12 B,C; G 2 D,E; H 5 D,E; I 6 F,G';
    expect(critical(text, 30)).toBe('A C F I');
    expect(floats(text, 30, 'totalFloat')).toEqual({ B: 9, D: 11, E: 1, G: 1, H: 4 });
    expect(floats(text, 30, 'freeFloat')).toEqual({ B: 9, D: 10, G: 1, H: 4 });
  });

  // Hillier and Lieberman, the Reliable Construction project: network from memory, results worked out again.
  it('agrees with a project of 14 activities and 44 weeks', () => {
    const text =
      'A 2; B 4 A; C 10 B; D 6 C; E 4 C; F 5 E; G 7 D; H 9 E,G; I 7 C; J 8 F,I; K 4 J; L 5 J; M 2 H; N 6 K,L';
    expect(critical(text, 44)).toBe('A B C E F J L N');
    expect(floats(text, 44, 'totalFloat')).toEqual({ D: 4, G: 4, H: 4, M: 4, I: 2, K: 1 });
    expect(floats(text, 44, 'freeFloat')).toEqual({ I: 2, K: 1, M: 4 });
  });

  // With the end as the only date, a finish can slip by its total float, with all that follows pushed on.
  it('lets each finish slip by its total float', () => {
    const text =
      'A 2; B 4 A; C 10 B; D 6 C; E 4 C; F 5 E; G 7 D; H 9 E,G; I 7 C; J 8 F,I; K 4 J; L 5 J; M 2 H; N 6 K,L';
    expect(floats(text, 44, 'slip')).toEqual({ D: 4, G: 4, H: 4, M: 4, I: 2, K: 1 });
    const house = 'A 4; B 6 A; C 3 A; D 6 B; E 14 D; F 5 C; G 2 E,F; H 2 G; I 3 G; J 4 H,I; K 2 J';
    expect(floats(house, 41, 'slip')).toEqual({ C: 18, F: 18, H: 1 });
  });
});

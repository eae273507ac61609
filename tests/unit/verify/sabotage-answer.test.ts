// A good answer, spoiled in one way at a time: each way is found. Codes are what the check must say, others may come with it.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import type { Allocation } from '../../../src/planner/search/types.js';
import { verify } from '../../../src/verify/index.js';
import { at } from '../../helpers/clock.js';
import { soundPlan } from './sound-plan.js';

type Answer = Allocation;
type Placed = Answer['placements'][number];
type Spoil = (answer: Answer) => Answer;

const good = allocate(soundPlan, { clock: () => 0 });
/** The same with nothing left over, of which more is claimed. */
const wholePlan: Plan = {
  ...soundPlan,
  activities: soundPlan.activities.filter((activity) => activity.id !== 'far'),
};
const whole = allocate(wholePlan, { clock: () => 0 });

const pieces =
  (id: string, by: (placement: Placed, index: number) => Placed | readonly Placed[]): Spoil =>
  (answer) => {
    let index = -1;
    return {
      ...answer,
      placements: answer.placements.flatMap((placement) => {
        if (placement.activity !== id) return [placement];
        index += 1;
        return by(placement, index);
      }),
    };
  };
const shift = (placement: Placed, minutes: number): Placed => ({
  ...placement,
  from: placement.from + minutes * MINUTE,
  to: placement.to + minutes * MINUTE,
});
const moved = (id: string, minutes: number): Spoil =>
  pieces(id, (placement) => shift(placement, minutes));
/** To a moment on the clocks, in a window. */
const put = (id: string, window: string | null, from: string): Spoil =>
  pieces(id, (placement) => ({
    ...placement,
    window,
    from: at(from),
    to: at(from) + placement.to - placement.from,
  }));
const without =
  (...ids: string[]): Spoil =>
  (answer) => ({
    ...answer,
    placements: answer.placements.filter((placement) => !ids.includes(placement.activity)),
  });
const keyDate =
  (pack: string, change: Partial<Answer['keyDates'][number]>): Spoil =>
  (answer) => ({
    ...answer,
    keyDates: answer.keyDates.map((date) =>
      date.package === pack ? { ...date, ...change } : date,
    ),
  });
const float =
  (id: string, by: (item: Answer['floats'][number]) => Partial<Answer['floats'][number]>): Spoil =>
  (answer) => ({
    ...answer,
    floats: answer.floats.map((item) => (item.activity === id ? { ...item, ...by(item) } : item)),
  });
const value =
  (
    name: string,
    by: (
      item: Answer['certificate']['objectives'][number],
    ) => Partial<Answer['certificate']['objectives'][number]>,
  ): Spoil =>
  (answer) => {
    const objectives = answer.certificate.objectives.map((objective) =>
      objective.name === name ? { ...objective, ...by(objective) } : objective,
    );
    return { ...answer, certificate: { ...answer.certificate, objectives } };
  };
const text =
  (words: string): Spoil =>
  (answer) => ({ ...answer, certificate: { ...answer.certificate, text: words } });
const all =
  (...spoils: readonly Spoil[]): Spoil =>
  (answer) =>
    spoils.reduce((so, spoil) => spoil(so), answer);
const first = (answer: Answer, id: string): Placed =>
  answer.placements.find((placement) => placement.activity === id)!;

const ways: readonly (readonly [string, string, Spoil])[] = [
  // Where and when.
  ['a piece a minute into the lead-in', 'lead-in', moved('cut', -1)],
  ['a piece a minute into the lead-out', 'lead-out', put('clip', 'W1', '2027-03-27 04:11')],
  ['a piece in the margin', 'margin', put('clip', 'W2', '2027-03-28 07:31')],
  ['a piece past the booked end', 'outside-window', put('clip', 'W2', '2027-03-28 08:30')],
  ['a piece a minute into the curfew', 'curfew', moved('weld', -1)],
  ['isolated work before the sections are dead', 'lead-in', put('wire', 'W3', '2027-04-04 00:09')],
  ['isolated work when sections go live', 'lead-out', put('wire', 'W3', '2027-04-04 03:06')],
  [
    'the wrong window',
    'outside-window',
    pieces('clip', (placement) => ({ ...placement, window: 'W3' })),
  ],
  ['a withdrawn window', 'withdrawn', put('clip', 'X', '2027-04-10 23:30')],
  [
    'a window that is not there',
    'unknown-window',
    pieces('clip', (placement) => ({ ...placement, window: 'Z' })),
  ],
  ['another window than chosen', 'fixed-elsewhere', put('weld', 'W1', '2027-03-27 00:30')],
  ['inside work outside', 'place', pieces('clip', (placement) => ({ ...placement, window: null }))],
  [
    'outside work in a window',
    'place',
    pieces('yard', (placement) => ({ ...placement, window: 'W1' })),
  ],
  ['work before it may begin', 'not-before', put('clip', 'W1', '2027-03-27 00:00')],
  ['outside work a minute too soon', 'not-before', moved('yard', -1)],
  // How much.
  ['a placement dropped', 'left-out', without('clip')],
  ['three placements dropped', 'left-out', without('clip', 'wire', 'yard')],
  ['all placements dropped', 'left-out', (answer) => ({ ...answer, placements: [] })],
  ['what is left over not listed', 'left-out', (answer) => ({ ...answer, unplaced: [] })],
  [
    'left over without a reason',
    'no-reason',
    (answer) => ({
      ...answer,
      unplaced: answer.unplaced.map((item) => ({ ...item, reasons: [] })),
    }),
  ],
  [
    'placed work listed as left over',
    'listed-though-placed',
    (answer) => ({
      ...answer,
      unplaced: [...answer.unplaced, { ...answer.unplaced[0]!, activity: 'clip' }],
    }),
  ],
  [
    'a whole piece split',
    'split',
    pieces('clip', (placement) => [
      { ...placement, to: placement.from + 30 * MINUTE },
      { ...placement, from: placement.from + 30 * MINUTE },
    ]),
  ],
  [
    'a minute missing',
    'minutes',
    pieces('lay', (placement) => ({ ...placement, to: placement.to - MINUTE })),
  ],
  [
    'units miscounted',
    'left-out',
    pieces('poles', (placement, i) =>
      i > 0
        ? placement
        : { ...placement, units: placement.units! - 1, to: placement.to - 50 * MINUTE },
    ),
  ],
  [
    'a unit too many',
    'units',
    pieces('poles', (placement, i) =>
      i === 0
        ? placement
        : { ...placement, units: placement.units! + 1, to: placement.to + 50 * MINUTE },
    ),
  ],
  [
    'set up not paid',
    'minutes',
    pieces('poles', (placement, i) =>
      i === 0 ? placement : { ...placement, to: placement.to - 20 * MINUTE },
    ),
  ],
  [
    'make safe not paid',
    'minutes',
    pieces('poles', (placement, i) =>
      i > 0 ? placement : { ...placement, to: placement.to - 10 * MINUTE },
    ),
  ],
  [
    'work that nobody asked for',
    'unknown-activity',
    (answer) => ({
      ...answer,
      placements: [...answer.placements, { ...first(answer, 'clip'), activity: 'new' }],
    }),
  ],
  [
    'finished work done again',
    'overlap',
    pieces('poles', (placement, i) => (i === 0 ? [placement, placement] : placement)),
  ],
  // Order, plant, the line.
  ['work before what it waits for', 'link', moved('lay', -1)],
  ['a gap a minute short', 'link', moved('test', -1)],
  ['a gap of eight hours cut', 'link', put('grind', 'W2', '2027-03-28 07:00')],
  ['two pieces for one gang', 'resource', put('weld', 'W2', '2027-03-28 00:30')],
  ['plant that has gone', 'resource', put('cut', 'W3', '2027-04-03 23:00')],
  ['work beside what must be alone', 'not-alone', put('lay', 'W1', '2027-03-26 23:49')],
  ['what makes good in another window', 'not-made-good', put('test', 'W2', '2027-03-28 00:30')],
  [
    'what makes good left out, and said so',
    'not-made-good',
    all(without('test'), (answer) => ({
      ...answer,
      unplaced: [...answer.unplaced, { ...answer.unplaced[0]!, activity: 'test' }],
    })),
  ],
  // What is told of it.
  [
    'a pair not stated dropped',
    'unstated-missing',
    (answer) => ({ ...answer, unstated: answer.unstated.slice(1) }),
  ],
  [
    'a pair not stated too many',
    'unstated-extra',
    (answer) => ({
      ...answer,
      unstated: [...answer.unstated, { ...answer.unstated[0]!, activity: 'cut', other: 'test' }],
    }),
  ],
  [
    'a pair turned round',
    'unstated-extra',
    (answer) => ({
      ...answer,
      unstated: answer.unstated.map((unstated) => ({
        ...unstated,
        activity: unstated.other,
        other: unstated.activity,
      })),
    }),
  ],
  ['a key date 14 days early', 'key-date-missing', keyDate('Q', { due: at('2027-03-21 12:00') })],
  [
    'a key date dropped',
    'key-date-missing',
    (answer) => ({ ...answer, keyDates: answer.keyDates.slice(1) }),
  ],
  [
    'a forecast a minute early',
    'forecast',
    keyDate('Q', { forecast: first(good, 'grind').to - MINUTE }),
  ],
  ['met turned to missed', 'met', keyDate('R', { met: false })],
  [
    'float of a key date ten hours more',
    'key-date-float',
    (answer) =>
      keyDate('R', {
        floatMinutes: answer.keyDates.find((date) => date.package === 'R')!.floatMinutes! + 600,
      })(answer),
  ],
  [
    'float of an activity ten hours more',
    'float',
    float('test', (item) => ({ totalFloatMinutes: item.totalFloatMinutes + 600 })),
  ],
  [
    'float ten hours more, and the latest finish',
    'float',
    float('test', (item) => ({
      totalFloatMinutes: item.totalFloatMinutes + 600,
      latestStart: item.latestStart + 600 * MINUTE,
      latestFinish: item.latestFinish + 600 * MINUTE,
    })),
  ],
  [
    'free float a minute more than the followers leave',
    'float',
    float('cut', () => ({ freeFloatMinutes: 1 })),
  ],
  [
    'latest start a minute sooner than its length before the latest finish',
    'float',
    float('test', ({ latestStart }) => ({ latestStart: latestStart - 60_000 })),
  ],
  ['critical turned round', 'float', float('test', () => ({ critical: true }))],
  ['a float left out', 'float', (answer) => ({ ...answer, floats: answer.floats.slice(1) })],
  [
    'a finish a minute early',
    'finishes-at',
    (answer) => ({ ...answer, finishesAt: answer.finishesAt! - MINUTE }),
  ],
  [
    'a window fewer',
    'windows-used',
    (answer) => ({ ...answer, windowsUsed: answer.windowsUsed - 1 }),
  ],
  [
    'a value off by one',
    'objective',
    value('finish', (item) => ({ value: item.value + 1, lowerBound: item.value + 1 })),
  ],
  [
    'a count of windows off by one',
    'objective',
    value('fewest-windows', (item) => ({ value: item.value - 1, lowerBound: item.value - 1 })),
  ],
  [
    'the first value told twice, in two ways',
    'objective',
    (answer) => ({ ...answer, certificate: { ...answer.certificate, objective: 1 } }),
  ],
  ['a bound above its value', 'bound', value('finish', (item) => ({ lowerBound: item.value + 1 }))],
  ['a bound that is no number', 'bound', value('finish', () => ({ lowerBound: Number.NaN }))],
  [
    'proven with a bound below',
    'proven',
    value('finish', (item) => ({ lowerBound: item.value - 1 })),
  ],
  [
    'words that say more than the values',
    'proven',
    value('finish', (item) => ({ lowerBound: item.value - 1, proven: false })),
  ],
];

describe('a good answer', () => {
  it('has no fault', () => {
    expect(good.placements.map((placement) => placement.activity).toSorted()).toEqual([
      'clip',
      'cut',
      'grind',
      'lay',
      'poles',
      'poles',
      'test',
      'weld',
      'wire',
      'yard',
    ]);
    expect(good.unplaced.map((item) => item.activity)).toEqual(['far']);
    expect(verify(soundPlan, good)).toEqual([]);
    expect(verify(wholePlan, whole)).toEqual([]);
  });

  it.each(ways)('spoiled by %s is found: %s', (_, code, spoil) => {
    expect(verify(soundPlan, spoil(good)).map((fault) => fault.code)).toContain(code);
  });

  it('with a value that is open has no fault; its bound set to the value, or the word proven, has', () => {
    const open = all(
      value('fewest-windows', () => ({ lowerBound: 2, proven: false })),
      text('key dates proven best; count of windows best found, at most 1 window from best'),
    );
    const codes = (spoil: Spoil): string[] =>
      verify(wholePlan, spoil(whole)).map((fault) => fault.code);
    expect(codes(open)).toEqual([]);
    expect(
      codes(
        all(
          open,
          value('fewest-windows', () => ({ lowerBound: 3 })),
        ),
      ),
    ).toEqual(['bound']);
    expect(
      codes(
        all(
          open,
          value('fewest-windows', () => ({ proven: true })),
        ),
      ),
    ).toContain('proven');
    expect(codes(all(open, text('proven best')))).toEqual(['proven']);
  });
});

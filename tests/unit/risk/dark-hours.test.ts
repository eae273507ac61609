import { describe, expect, it } from 'vitest';
import { handback, type Actual } from '../../../src/risk/index.js';
import type { AccessWindow, Activity } from '../../../src/model/index.js';
import { at } from '../../helpers/clock.js';
import { anActivity, aPlan, rulesWith, whole } from '../../helpers/handback-plan.js';

// Nights in the dark hours, on which clocks change: a late grant, a line granted after the other, units, and stopping. Each chance
// is held against a simulation of a few lines, with a random number and a triangular draw of its own.

const zone = 'Europe/London';
const RUNS = 20_000;
const rules = rulesWith({
  zone,
  leadIn: [
    { step: 'Protect', minutes: 20, low: 15, high: 40 },
    { step: 'Isolate', minutes: 30, low: 20, high: 60, when: 'isolation' },
  ],
  leadOut: [
    { step: 'Give up isolation', minutes: 15, low: 10, high: 30, when: 'isolation' },
    { step: 'Inspect', minutes: 20, low: 15, high: 45 },
  ],
  margin: { minutes: 30 },
});
const droppers: Activity['work'] = {
  ...{ kind: 'units', units: 4, done: 0, minutesPerUnit: 30, setUpMinutes: 10 },
  ...{ makeSafeMinutes: 10, spread: { low: 25, high: 50 } },
};
const activities = [
  anActivity('DR', droppers, { lines: ['Up'], isolation: ['E1'], madeGoodBy: 'none' }),
  anActivity('PK', whole(40, 30, 70), { lines: ['Down'], madeGoodBy: 'none', mayWait: true }),
];
const night = (start: string, end: string): AccessWindow => ({
  ...{ id: 'W1', title: '', start: at(start), end: at(end), zone, lines: ['Up', 'Down'] },
  ...{ isolation: [{ section: 'E1' }], status: 'confirmed', trainsAfter: '' },
});
const spring = night('2027-03-27 23:10', '2027-03-28 06:20');
const autumn = night('2027-10-30 23:10', '2027-10-31 05:10');

/** A generator of its own (a 32-bit xorshift), so that nothing of the product is asked for luck. */
function luck(seed: number): () => number {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 4_294_967_296;
  };
}
/** Of a triangle, by its inverse. */
function drawn(low: number, likely: number, high: number, u: number): number {
  const fold = (likely - low) / (high - low);
  return u < fold
    ? low + Math.sqrt(u * (high - low) * (likely - low))
    : high - Math.sqrt((1 - u) * (high - low) * (high - likely));
}
const random = luck(20_270_328);
const draw = (low: number, likely: number, high: number): number =>
  drawn(low, likely, high, random());
const unit = (): number => draw(25, 30, 50);
const units = (count: number): number =>
  Array.from({ length: count }, unit).reduce((sum, value) => sum + value, 0);
const share = (inTime: () => boolean): number =>
  Array.from({ length: 200_000 }, inTime).filter(Boolean).length / 200_000;

const look = (window: AccessWindow, moment: number, actuals: readonly Actual[]) => {
  const start = window.start;
  const placements = [
    { activity: 'DR', window: 'W1', from: start + 50 * 60_000, to: start + 190 * 60_000, units: 4 },
    { activity: 'PK', window: 'W1', from: start + 20 * 60_000, to: start + 60 * 60_000 },
  ];
  const plan = aPlan(activities, { zone, rules, windows: [window] });
  return handback(plan, window, placements, { seed: 4, runs: RUNS, at: moment, actuals });
};
type Live = NonNullable<ReturnType<typeof look>['live']>;

/** Every count of further units within three standard errors, the own simulation's with the product's. */
function agrees(live: Live, more: number, expected: number): void {
  const option = live.options.find((each) => each.more === more && each.leaveOut.length === 0)!;
  const runs = Math.min(RUNS, 10_000);
  const error = Math.hypot(
    Math.sqrt((expected * (1 - expected)) / runs),
    Math.sqrt((expected * (1 - expected)) / 200_000),
  );
  expect(Math.abs(option.onTime.probability - expected)).toBeLessThanOrEqual(
    3 * error + 1 / runs + 1e-9,
  );
}

describe('a shift in the dark hours of a clock change', () => {
  it('granted late, one of four done and the next under way: every stop by an own simulation', () => {
    const { live } = look(spring, at('2027-03-28 03:40'), [
      { step: 'Possession granted', finishedAt: at('2027-03-27 23:35') },
      { step: 'Protect', finishedAt: at('2027-03-27 23:58') },
      { step: 'Isolate', finishedAt: at('2027-03-28 00:40') },
      {
        activity: 'DR',
        startedAt: at('2027-03-28 00:40'),
        unitsDone: 1,
        unitsAt: at('2027-03-28 03:25'),
      },
    ]);
    // 03:40 to 06:20 is 160 minutes; a unit has been under way for 15 of them, which is less than any takes.
    const inTime = (more: number) => (): boolean => {
      const up = (more > 0 ? unit() - 15 + units(more - 1) : 0) + 10 + draw(10, 15, 30);
      return Math.max(up, draw(30, 40, 70)) + draw(15, 20, 45) <= 160;
    };
    for (const more of [3, 2, 1, 0]) agrees(live!, more, share(inTime(more)));
    expect(live!.options.map((option) => option.more)).toContain(0);
  });

  it('one line granted and the other said for later: the same', () => {
    const { live } = look(spring, at('2027-03-28 02:10'), [
      { step: 'Line Up granted', finishedAt: at('2027-03-27 23:35') },
      { step: 'Line Down granted', expectedAt: at('2027-03-28 03:40') },
    ]);
    // 02:10 to 06:20 is 250 minutes; Down comes in 90.
    const inTime = (more: number) => (): boolean => {
      const protect = draw(15, 20, 40);
      const up = protect + draw(20, 30, 60) + (more > 0 ? 20 + units(more) : 0);
      const down = 90 + protect + draw(30, 40, 70);
      return Math.max(up + draw(10, 15, 30), down) + draw(15, 20, 45) <= 250;
    };
    for (const more of [4, 3, 2]) agrees(live!, more, share(inTime(more)));
  });

  it('in the hour that comes twice, with its second showing named: the same, and stop now said where it is all that is left', () => {
    const seen = (moment: number): Live =>
      look(autumn, moment, [
        { step: 'Possession granted', finishedAt: at('2027-10-30 23:40') },
        { step: 'Protect', finishedAt: at('2027-10-31 00:05') },
        { step: 'Isolate', finishedAt: at('2027-10-31 00:45') },
        { activity: 'PK', finishedAt: at('2027-10-31 01:20', 'earlier') },
        {
          ...{ activity: 'DR', startedAt: at('2027-10-31 00:45'), unitsDone: 1 },
          unitsAt: at('2027-10-31 01:50', 'later'),
        },
      ]).live!;
    const minutesLeft = (moment: number): number => (autumn.end - moment) / 60_000;
    const inTime = (more: number, left: number, gone: number) => (): boolean =>
      (more > 0 ? unit() - gone + units(more - 1) : 0) + 10 + draw(10, 15, 30) + draw(15, 20, 45) <=
      left;
    const early = at('2027-10-31 02:00');
    expect(minutesLeft(early)).toBe(190);
    for (const more of [3, 2]) agrees(seen(early), more, share(inTime(more, 190, 10)));
    const late = at('2027-10-31 02:10');
    for (const more of [3, 2, 1, 0])
      agrees(seen(late), more, share(inTime(more, minutesLeft(late), 20)));
    // 04:10: an hour is left, and the unit under way has outrun its longest estimate.
    const last = seen(at('2027-10-31 04:10'));
    expect(last.advice.say).toBe('stop');
    agrees(last, 0, share(inTime(0, 60, 0)));
  });
});

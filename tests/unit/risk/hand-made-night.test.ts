import { describe, expect, it } from 'vitest';
import { minutesBetween, type Instant } from '../../../src/calendar/index.js';
import type { Activity, Link, Plan } from '../../../src/model/index.js';
import type { Placement } from '../../../src/planner/fit/types.js';
import { handback, type Actual, type HandbackResult } from '../../../src/risk/index.js';
import {
  anActivity,
  aPlan,
  at,
  aWindow,
  nightStart,
  placed,
  rulesWith,
  whole,
} from '../../helpers/handback-plan.js';

// A night made by hand: a crane is rigged on the line, four deck units are laid, the crane is derigged, the track is
// tested; welding and fencing may wait. Every figure is worked out below, without the code under test.
const link = (activity: string): Link => ({ activity, from: 'finish', gapMinutes: 0 });
// The crane stands clear of the line until it lifts: from then on derigging it is bound to the laying.
const rig = anActivity('RIG', whole(30, 20, 50), { madeGoodBy: 'none' });
const lay = anActivity(
  'LAY',
  {
    kind: 'units',
    units: 4,
    done: 0,
    minutesPerUnit: 40,
    setUpMinutes: 0,
    makeSafeMinutes: 10,
    spread: { low: 30, high: 70 },
  },
  { after: [link('RIG')], madeGoodBy: ['DERIG', 'TEST'] },
);
const derig = anActivity('DERIG', whole(35, 25, 60), { after: [link('LAY')], madeGoodBy: 'none' });
const weld = anActivity('WELD', whole(45, 35, 70), {
  after: [link('LAY')],
  madeGoodBy: 'none',
  mayWait: true,
});
const test = anActivity('TEST', whole(40, 30, 60), { after: [link('DERIG')], madeGoodBy: 'none' });
const fence = anActivity('FENCE', whole(30, 20, 40), {
  after: [link('RIG')],
  madeGoodBy: 'none',
  mayWait: true,
});
const work: readonly Activity[] = [rig, lay, derig, weld, test, fence];
const rules = rulesWith({
  leadIn: [{ step: 'Place protection', minutes: 30, protects: true }],
  leadOut: [{ step: 'Inspect and give up', minutes: 30, low: 25, high: 60 }],
  margin: { minutes: 45 },
  handback: { chance: 0.95 },
});
const plan: Plan = aPlan(work, { rules });
const placements: readonly Placement[] = [
  placed('RIG', 30, 60),
  placed('LAY', 60, 230, 4),
  placed('FENCE', 60, 90),
  placed('DERIG', 230, 265),
  placed('WELD', 230, 275),
  placed('TEST', 265, 305),
];
const minute = (instant: Instant | null): number => minutesBetween(nightStart, instant!);
const RUNS = 20_000;

const outlook = (seen?: { at: Instant; actuals: readonly Actual[] }): HandbackResult =>
  handback(plan, aWindow(), placements, {
    seed: 3,
    runs: RUNS,
    ...seen,
    commitments: [
      { activity: 'LAY', irreversible: true },
      { activity: 'RIG', irreversible: false, reinstatementMinutes: 50 },
    ],
    goPoints: [
      { id: 'G', window: 'W1', name: 'Begin to lay?', holder: 'Site manager', before: 'LAY' },
    ],
  });

describe('times that leave room for all that must follow', () => {
  const { cutOffs, decisions, goPoints } = outlook();
  const latest = (name: string): number =>
    minute(cutOffs.find((cutOff) => cutOff.activity === name || cutOff.name === name)!.latestStart);

  it('are those worked out by hand, step by step from the booked end', () => {
    const clear = 480 - 45; // the booked end less the margin
    const inspect = clear - 30;
    const testBy = inspect - 40;
    const derigBy = testBy - 35;
    const weldBy = inspect - 45;
    const layBy = Math.min(derigBy, weldBy) - 10 - 4 * 40; // make safe, four units
    const rigBy = layBy - 30;
    expect([inspect, testBy, derigBy, weldBy, layBy, rigBy]).toEqual([
      405, 365, 330, 360, 160, 130,
    ]);
    expect(
      ['Inspect and give up', 'TEST', 'DERIG', 'WELD', 'LAY', 'RIG', 'Place protection'].map(
        latest,
      ),
    ).toEqual([inspect, testBy, derigBy, weldBy, layBy, rigBy, rigBy - 30]);
    // The point of no return is the cut-off, and so is the moment at which somebody decides.
    expect(minute(decisions[0]!.pointOfNoReturn)).toBe(layBy);
    expect(minute(goPoints[0]!.at)).toBe(layBy);
    // Given up, the crane is taken away in 50 minutes, then the lead-out, and the margin is kept.
    expect(minute(decisions[1]!.latestAbort)).toBe(inspect - 50);
  });

  it('have the lead-out last', () => {
    expect(cutOffs.at(-1)!.name).toBe('Inspect and give up');
  });
});

/** A triangular length by its textbook inverse, from a generator of its own (Lehmer's, 1951: 48271 mod 2^31 - 1). */
function dice(seed: number) {
  let state = seed;
  const next = (): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return (low: number, likely: number, high: number): number => {
    const u = next();
    const turn = (likely - low) / (high - low);
    return u < turn
      ? low + Math.sqrt(u * (high - low) * (likely - low))
      : high - Math.sqrt((1 - u) * (high - low) * (high - likely));
  };
}

/** What is left of the night: `start` minutes from now on, with so many units to lay and what may wait or not. */
interface Rest {
  readonly from: number;
  readonly rig?: true;
  /** Whole units still to be laid; absent: laying is over. */
  readonly units?: number;
  /** Minutes that the first of them has lasted already. */
  readonly elapsed?: number;
  readonly weld: boolean;
  readonly fence: boolean;
  /** Minutes that derigging has lasted already. */
  readonly derigElapsed?: number;
}

const RUNS_BY_HAND = 200_000;

/** Share of runs that are over by minute 480, by a simulation that shares no code with the product. */
function byHand(rest: Rest): number {
  const draw = dice(20_270_611);
  let onTime = 0;
  for (let run = 0; run < RUNS_BY_HAND; run += 1) {
    const begin = rest.rig ? rest.from + 30 + draw(20, 30, 50) : rest.from;
    let laid = begin;
    for (let unit = 0; unit < (rest.units ?? 0); unit += 1) {
      let length = draw(30, 40, 70);
      const gone = unit === 0 ? (rest.elapsed ?? 0) : 0;
      // Known to have lasted so long: draws that are shorter did not happen.
      while (length <= gone) length = draw(30, 40, 70);
      laid += length - gone;
    }
    if (rest.units !== undefined) laid += 10;
    let derigs = draw(25, 35, 60);
    while (derigs <= (rest.derigElapsed ?? 0)) derigs = draw(25, 35, 60);
    const tested = laid + derigs - (rest.derigElapsed ?? 0) + draw(30, 40, 60);
    const welded = rest.weld ? laid + draw(35, 45, 70) : 0;
    const fenced = rest.fence ? begin + draw(20, 30, 40) : 0;
    const clear = Math.max(tested, welded, fenced);
    if (clear + draw(25, 30, 60) <= 480) onTime += 1;
  }
  return onTime / RUNS_BY_HAND;
}

const near = (found: { probability: number; standardError: number }, byHandShare: number): void => {
  const own = Math.sqrt(Math.max(byHandShare * (1 - byHandShare), 1e-5) / RUNS_BY_HAND);
  const error = Math.hypot(found.standardError, own);
  expect(Math.abs(found.probability - byHandShare)).toBeLessThanOrEqual(3 * error);
};

/**
 * The advice line as it is worked out here: its words with a figure for each way on, and each figure within three standard
 * errors of the simulation by hand (and half a tenth of rounding).
 */
function isLine(why: string, words: string, shares: readonly number[]): void {
  const figures = [...why.matchAll(/(over 99\.9|under 0\.1|\d+\.\d) %/g)].map((item) => item[1]!);
  expect(why.replace(/(over 99\.9|under 0\.1|\d+\.\d) %/g, '#')).toBe(words);
  expect(figures).toHaveLength(shares.length + 1);
  expect(figures.at(-1)).toBe('95.0');
  shares.forEach((share, k) => {
    const told = Number(/[\d.]+$/.exec(figures[k]!)![0]) / 100;
    const spread = Math.max(share * (1 - share), 1e-4);
    // What the product tells rests on 10,000 runs at the least.
    const error = Math.sqrt(spread / 10_000 + spread / RUNS_BY_HAND);
    expect(Math.abs(told - share)).toBeLessThanOrEqual(3 * error + 0.0011);
  });
}

const rigged: Actual = { activity: 'RIG', startedAt: at(80), finishedAt: at(150) };
const fenced: Actual = { activity: 'FENCE', startedAt: at(151), finishedAt: at(181) };

describe('five moments of the shift', () => {
  it('before the grant: all as planned', () => {
    const { live, simulation } = outlook({ at: at(0), actuals: [] });
    near(
      simulation.outlook.onTime,
      byHand({ from: 0, rig: true, units: 4, weld: true, fence: true }),
    );
    expect(live!.advice).toMatchObject({ say: 'carry-on', more: 4 });
    isLine(live!.advice.why, 'All as planned: #; wanted #.', [
      byHand({ from: 0, rig: true, units: 4, weld: true, fence: true }),
    ]);
  });

  it('at the minute at which the crane is rigged, late: fewer units reach it, none begun is a way on', () => {
    const { live, simulation } = outlook({ at: at(150), actuals: [rigged] });
    const all = byHand({ from: 150, units: 4, weld: true, fence: true });
    const three = byHand({ from: 150, units: 3, weld: true, fence: true });
    const none = byHand({ from: 150, weld: true, fence: true });
    near(simulation.outlook.onTime, all);
    const ways = live!.options.filter(
      (option) => option.activity === 'LAY' && option.leaveOut.length === 0,
    );
    expect(ways.map((option) => [option.units, option.more])).toEqual([
      [4, 4],
      [3, 3],
      [2, 2],
      [1, 1],
      [0, 0],
    ]);
    near(ways[1]!.onTime, three);
    near(ways[4]!.onTime, none);
    expect(all).toBeLessThan(0.95);
    expect(three).toBeGreaterThan(0.95);
    // Without welding and fencing four units do not reach it either: the crane and the tests decide.
    expect(byHand({ from: 150, units: 4, weld: false, fence: false })).toBeLessThan(0.95);
    expect(live!.advice).toMatchObject({ say: 'more', activity: 'LAY', more: 3, leaveOut: [] });
    isLine(live!.advice.why, '4 more: #; 3 more: #; wanted #.', [all, three]);
  });

  const two = (now: number): { at: Instant; actuals: readonly Actual[] } => ({
    at: at(now),
    actuals: [
      rigged,
      fenced,
      { activity: 'LAY', startedAt: at(150), unitsDone: 2, unitsAt: at(305) },
    ],
  });

  it('at the boundary after two of four units: stop now, with zero more among the ways on', () => {
    const { live, simulation } = outlook(two(305));
    const chance = (units: number): number =>
      byHand({ from: 305, units, weld: true, fence: false });
    near(simulation.outlook.onTime, chance(2));
    const ways = live!.options.filter(
      (option) => option.activity === 'LAY' && option.leaveOut.length === 0,
    );
    expect(ways.map((option) => option.more)).toEqual([2, 1, 0]);
    near(ways[1]!.onTime, chance(1));
    near(ways[2]!.onTime, chance(0));
    expect([chance(2) < 0.2, chance(1) < 0.8, chance(0) > 0.95]).toEqual([true, true, true]);
    expect(ways[2]!.condition).toBe('');
    expect(live!.advice).toMatchObject({ say: 'stop', activity: 'LAY', more: 0, leaveOut: [] });
    isLine(live!.advice.why, '2 more: #; 1 more: #; stop at 2: #; wanted #.', [
      chance(2),
      chance(1),
      chance(0),
    ]);
  });

  it('seven minutes later: the third is taken to be under way, and a stop says what must be so', () => {
    const { live, simulation } = outlook(two(312));
    near(
      simulation.outlook.onTime,
      byHand({ from: 312, units: 2, elapsed: 7, weld: true, fence: false }),
    );
    const stop = live!.options.find((option) => option.more === 0 && option.leaveOut.length === 0)!;
    near(stop.onTime, byHand({ from: 312, units: 0, weld: true, fence: false }));
    expect(stop.condition).toContain('unit 3');
    expect(live!.advice.say).toBe('stop');
    const chance = (rest: Pick<Rest, 'units' | 'elapsed'>): number =>
      byHand({ from: 312, ...rest, weld: true, fence: false });
    isLine(
      live!.advice.why,
      '2 more: #; 1 more: #; stop at 2: #; wanted #. Only if unit 3 of Activity LAY has not begun: it is taken to be under way since the last was done.',
      [chance({ units: 2, elapsed: 7 }), chance({ units: 1, elapsed: 7 }), chance({ units: 0 })],
    );
  });

  it('while the crane is derigged: neither that, nor the tests, nor giving back is ever left out', () => {
    const { live, simulation } = outlook({
      at: at(400),
      actuals: [
        rigged,
        fenced,
        { activity: 'LAY', startedAt: at(150), finishedAt: at(370) },
        { activity: 'DERIG', startedAt: at(380) },
      ],
    });
    near(
      simulation.outlook.onTime,
      (() => {
        // Derigging began at 380, 20 minutes ago; welding has not begun and waits for nothing more.
        const draw = dice(77);
        let onTime = 0;
        for (let run = 0; run < RUNS_BY_HAND; run += 1) {
          const tested = 380 + draw(25, 35, 60) + draw(30, 40, 60);
          const welded = 400 + draw(35, 45, 70);
          if (Math.max(tested, welded) + draw(25, 30, 60) <= 480) onTime += 1;
        }
        return onTime / RUNS_BY_HAND;
      })(),
    );
    expect(live!.options.flatMap((option) => option.leaveOut)).toEqual(['WELD']);
    expect(live!.advice).toMatchObject({ say: 'carry-on', more: null, leaveOut: ['WELD'] });
    // Without welding, by the same figures as above.
    const draw = dice(78);
    let onTime = 0;
    for (let run = 0; run < RUNS_BY_HAND; run += 1) {
      // Derigging is known to have lasted twenty minutes; it takes at least 25.
      if (380 + draw(25, 35, 60) + draw(30, 40, 60) + draw(25, 30, 60) <= 480) onTime += 1;
    }
    isLine(
      live!.advice.why,
      'all as planned: #; without Activity WELD: #; wanted #. No way reaches it: say now that the line may be handed back late.',
      [simulation.outlook.onTime.probability, onTime / RUNS_BY_HAND],
    );
  });
});

describe('a crane that fouls the line from its rigging on', () => {
  it('binds all that lies between: no unit is offered to be left out, and the reason is told', () => {
    const fouling = aPlan(
      work.map((activity) =>
        activity.id === 'RIG' ? { ...activity, madeGoodBy: ['DERIG'] } : activity,
      ),
      { rules },
    );
    const { live } = handback(fouling, aWindow(), placements, {
      seed: 3,
      runs: 2000,
      at: at(305),
      actuals: [rigged, { activity: 'LAY', startedAt: at(150), unitsDone: 2, unitsAt: at(305) }],
    });
    expect(live!.options.flatMap((option) => (option.more === 0 ? [option.activity] : []))).toEqual(
      [],
    );
    expect(live!.notOffered).toMatchObject([{ activity: 'LAY' }]);
    expect(live!.notOffered[0]!.why).toContain('RIG');
    expect(live!.advice.say).toBe('carry-on');
  });
});

describe('what helps most', () => {
  it('never names a step that guards people', () => {
    const wide = rulesWith({
      leadIn: [{ step: 'Isolate and earth', minutes: 45, low: 10, high: 200, protects: true }],
      leadOut: [{ step: 'Inspect', minutes: 30, low: 25, high: 60 }],
    });
    const named = (rulesOf: typeof wide) =>
      handback(aPlan(work, { rules: rulesOf }), aWindow(), placements, {
        seed: 3,
        runs: 2000,
      }).simulation.helpsMost.map((item) => item.name);
    expect(named(wide)).not.toContain('Isolate and earth');
    expect(named({ ...wide, leadIn: [{ ...wide.leadIn[0]!, protects: false }] })[0]).toBe(
      'Isolate and earth',
    );
  });
});

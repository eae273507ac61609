import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minutesBetween, type Instant } from '../../../src/calendar/index.js';
import { needsOf, type Activity, type Link, type UnitWork } from '../../../src/model/index.js';
import {
  grantStep,
  handback,
  marginVerdictOf,
  windowVerdictOf,
  type HandbackOptions,
  type HandbackResult,
} from '../../../src/risk/index.js';
import { ledgerOf } from '../../../src/rules/index.js';
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

const options: HandbackOptions = { seed: 11, runs: 2000 };
const minute = (instant: Instant): number => minutesBetween(nightStart, instant);
const link = (activity: string, gapMinutes = 0): Link => ({ activity, from: 'finish', gapMinutes });

const cut = anActivity('CUT', whole(120, 100, 180));
const lift = anActivity('LIFT', whole(90, 80, 150), { after: [link('CUT')] });
const plan = aPlan([cut, lift]);
const placements = [placed('CUT', 30, 150), placed('LIFT', 150, 240)];
const cutOff = (result: HandbackResult, name: string) =>
  result.cutOffs.find((off) => off.name === name)!;

describe('the handback margin', () => {
  it('is the booked end less planned clear and lead-out', () => {
    const result = handback(plan, aWindow(), placements, options);
    expect(minute(result.plannedClear)).toBe(240);
    expect(result.leadOutMinutes).toBe(30);
    expect(result.marginMinutes).toBe(480 - 240 - 30);
    expect(result.requiredMinutes).toBe(45);
    expect(result.verdict).toBe('held');
  });

  it.each([
    [45, 45, 'held'],
    [44, 45, 'eaten'],
    [0, 45, 'eaten'],
    [-1, 45, 'overrun'],
    [0, 0, 'held'],
    [-1, 0, 'overrun'],
  ] as const)('of %d against %d required is %s', (margin, required, verdict) => {
    expect(marginVerdictOf(margin, required)).toBe(verdict);
  });

  it.each([
    ['held', 0.96, 0.95, 'held'],
    ['held', 0.94, 0.95, 'chance-low'],
    ['eaten', 0.94, 0.95, 'eaten'],
    ['overrun', 0.01, 0.95, 'overrun'],
    ['held', 0.01, null, 'held'],
  ] as const)('%s with a chance of %d, wanted %s: %s', (margin, chance, wanted, verdict) => {
    expect(windowVerdictOf(margin, chance, wanted)).toBe(verdict);
  });

  it('is called held only with the chance wanted too, and names the margin that would give it', () => {
    const rules = rulesWith({ handback: { chance: 0.95 } });
    const asked = aPlan([cut, lift], { rules });
    const low = handback(asked, aWindow({ end: at(316) }), placements, options);
    expect(low.marginVerdict).toBe('held');
    expect(low.verdict).toBe('chance-low');
    const chanceWith = (margin: number): number =>
      handback(asked, aWindow({ end: at(270 + margin) }), placements, options).simulation.outlook
        .onTime.probability;
    expect(chanceWith(low.marginForChanceMinutes)).toBeGreaterThanOrEqual(0.95);
    expect(chanceWith(low.marginForChanceMinutes - 1)).toBeLessThan(0.95);
    expect(handback(plan, aWindow(), placements, options).chanceWanted).toBeNull();
  });

  // Triangular distribution: F(x) = 1 - (c - x)^2 / ((c - a)(c - b)) from its mode b to its greatest c, a the least.
  it('says where other runs may give the other verdict: else it is that of the exact chance', () => {
    const exact = (length: number): number => 1 - (180 - length) ** 2 / (80 * 60);
    const bare = { leadIn: [], leadOut: [], margin: { minutes: 0 }, handback: { chance: 0.95 } };
    const asked = aPlan([cut], { rules: rulesWith(bare) });
    let close = 0;
    for (let seed = 1; seed <= 20; seed += 1)
      for (let length = 155; length <= 175; length += 1) {
        const end = at(length);
        const result = handback(asked, aWindow({ end }), [placed('CUT', 0, 120)], {
          seed,
          runs: 2000,
        });
        if (result.chanceIsClose) close += 1;
        else expect(result.verdict).toBe(exact(length) >= 0.95 ? 'held' : 'chance-low');
        expect(result.chanceIsClose || Math.abs(exact(length) - 0.95) > 0.002).toBe(true);
      }
    expect(close).toBeGreaterThan(40);
    expect(close).toBeLessThan(160);
    expect(handback(plan, aWindow(), placements, options).chanceIsClose).toBe(false);
  });

  it('adds up to the minute for any lengths', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 0, max: 200 }),
        fc.boolean(),
        (minutes, later, isolated) => {
          const work = anActivity('A', whole(minutes), { isolation: isolated ? ['S1'] : [] });
          const window = aWindow({ isolation: [{ section: 'S1' }] });
          const from = (isolated ? 75 : 30) + later;
          const own = aPlan([work]);
          const result = handback(own, window, [placed('A', from, from + minutes)], {
            ...options,
            runs: 10,
          });
          const leadOut = ledgerOf(window, needsOf(work), own.rules)
            .rows.filter((row) => row.kind === 'lead-out')
            .reduce((sum, row) => sum + row.minutes, 0);
          expect(result.leadOutMinutes).toBe(leadOut);
          expect(result.marginMinutes).toBe(480 - (from + minutes) - leadOut);
          expect(result.plannedHandback).toBe(at(480 - result.marginMinutes));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('counts the lead-out of each kind of work after its own last finish', () => {
    const wired = anActivity('WIRE', whole(60), { isolation: ['S1'] });
    const window = aWindow({ isolation: [{ section: 'S1' }] });
    const result = handback(
      aPlan([cut, wired]),
      window,
      [placed('CUT', 30, 150), placed('WIRE', 85, 145)],
      options,
    );
    // 150 + 30 for the cutting out, 145 + 50 for the wiring.
    expect(minute(result.plannedHandback)).toBe(195);
    expect(result.leadOutMinutes).toBe(45);
  });

  it('of a window without work is the whole window', () => {
    const result = handback(plan, aWindow(), [], options);
    expect(result.marginMinutes).toBe(480);
    expect(result.simulation.outlook.onTime.probability).toBe(1);
  });

  it('passes over placements of other windows', () => {
    const other = { ...placed('LIFT', 150, 470), window: 'W2' };
    expect(handback(plan, aWindow(), [placements[0]!, other], options).marginMinutes).toBe(300);
  });

  it('refuses a placement of work that is not in the plan', () => {
    expect(() => handback(plan, aWindow(), [placed('X', 0, 1)], options)).toThrow(/X/);
  });
});

describe('cut-off times', () => {
  it('come from a backward pass: to keep the margin, and to be on time at all', () => {
    const result = handback(plan, aWindow(), placements, options);
    const lifting = cutOff(result, 'Activity LIFT');
    expect(minute(lifting.latestFinish)).toBe(480 - 45 - 30);
    expect(minute(lifting.latestStart)).toBe(480 - 45 - 30 - 90);
    expect(minute(lifting.onTimeStart)).toBe(480 - 30 - 90);
    expect(lifting.slackMinutes).toBe(315 - 150);
    expect(minute(cutOff(result, 'Activity CUT').latestStart)).toBe(315 - 120);
    expect(minute(cutOff(result, 'Place protection').latestStart)).toBe(315 - 120 - 30);
    expect(minute(cutOff(result, 'Inspect and test').latestFinish)).toBe(435);
    expect(minute(cutOff(result, grantStep).latestFinish)).toBe(165);
  });

  it('allow for curing time between pieces of work', () => {
    const cured = aPlan([cut, { ...lift, after: [link('CUT', 60)] }]);
    const result = handback(cured, aWindow(), [placements[0]!, placed('LIFT', 210, 300)], options);
    expect(minute(cutOff(result, 'Activity CUT').latestFinish)).toBe(315 - 60);
  });

  it('allow for the order on shared plant, and only where it binds', () => {
    const crane = [{ resource: 'crane', amount: 1 }];
    const a = anActivity('A', whole(100), { resources: crane });
    const b = anActivity('B', whole(50), { resources: crane });
    const two = [placed('A', 30, 130), placed('B', 130, 180)];
    const latest = (capacity: number): number => {
      const own = aPlan([a, b], { resources: [{ id: 'crane', availability: [{ capacity }] }] });
      return minute(cutOff(handback(own, aWindow(), two, options), 'Activity A').latestFinish);
    };
    expect(latest(1)).toBe(480 - 45 - 30 - 50);
    expect(latest(2)).toBe(480 - 45 - 30);
  });

  it('bring work before a curfew that it would otherwise run into', () => {
    const loud = anActivity('LOUD', whole(60), { loud: true });
    const rules = rulesWith({ curfews: [{ name: 'Quiet', from: '04:00', to: '07:00' }] });
    const result = handback(aPlan([loud], { rules }), aWindow(), [placed('LOUD', 30, 90)], options);
    expect(minute(cutOff(result, 'Activity LOUD').latestFinish)).toBe(300);
  });

  it('give the point of no return and the latest time to abandon', () => {
    const result = handback(plan, aWindow(), placements, {
      ...options,
      commitments: [
        { activity: 'LIFT', irreversible: true, testMinutes: 20, reinstatementMinutes: 150 },
        { activity: 'CUT', irreversible: false, reinstatementMinutes: 200 },
      ],
    });
    // values 5.3 (D): deadline - (finish + test + give-up + margin); deadline - restore time, with lead-out and margin.
    expect(minute(result.decisions[0]!.pointOfNoReturn!)).toBe(480 - (90 + 20 + 30 + 45));
    expect(minute(result.decisions[0]!.latestAbort!)).toBe(480 - 45 - 30 - 150);
    expect(result.decisions[1]!.pointOfNoReturn).toBeNull();
  });
});

describe('the simulated handback', () => {
  const tight = aWindow({ end: at(300) });

  it('is certain where nothing is uncertain', () => {
    const own = aPlan([anActivity('A', whole(100))], { rules: rulesWith({ leadOut: [] }) });
    const { simulation } = handback(own, aWindow(), [placed('A', 30, 130)], options);
    expect([simulation.p50, simulation.p95].map(minute)).toEqual([130, 130]);
    expect(simulation.outlook.onTime.probability).toBe(1);
  });

  it('has rising P-values and names what decided the finish', () => {
    const { simulation } = handback(plan, tight, placements, options);
    const { p50, p80, p90, p95, outlook } = simulation;
    expect([...[p95, p50, p90, p80]].sort()).toEqual([p50, p80, p90, p95]);
    expect(outlook.onTime.probability).toBeGreaterThan(0.05);
    expect(outlook.onTime.probability).toBeLessThan(0.95);
    expect(simulation.criticality.find((item) => item.name === 'Activity CUT')!.share).toBe(1);
    expect(['Activity CUT', 'Activity LIFT']).toContain(simulation.helpsMost[0]!.name);
  });

  it('names nothing that helps where no run is late', () => {
    const { simulation } = handback(plan, aWindow(), placements, options);
    expect(simulation.outlook.onTime.probability).toBe(1);
    expect(simulation.helpsMost).toEqual([]);
  });

  it('names what helps where the first late run comes after a thousand that are not', () => {
    const resultWith = (seed: number, runs: number) =>
      handback(plan, aWindow(), placements, {
        ...options,
        seed,
        runs,
        events: [
          {
            name: 'Late grant',
            step: grantStep,
            probability: 0.0005,
            delay: { low: 240, likely: 240, high: 240 },
          },
        ],
      }).simulation;
    const seeds = [1, 2, 3, 4, 5, 6].filter(
      (seed) =>
        resultWith(seed, 1024).outlook.onTime.probability === 1 &&
        resultWith(seed, 10_000).outlook.onTime.probability < 1,
    );
    expect(seeds).not.toEqual([]);
    for (const seed of seeds) {
      const { helpsMost } = resultWith(seed, 10_000);
      expect(helpsMost).not.toEqual([]);
      // Of 20,000 runs the first 10,000 are drawn again for each change.
      expect(helpsMost).toEqual(resultWith(seed, 20_000).helpsMost);
    }
  });

  it('worsens with a late grant, by the whole of a delay that is certain', () => {
    const late = (probability: number) =>
      handback(plan, tight, placements, {
        ...options,
        events: [
          {
            name: 'Late grant',
            step: grantStep,
            probability,
            delay: { low: 40, likely: 40, high: 40 },
          },
        ],
      }).simulation;
    const sure = late(1).handbackMinutes;
    const never = late(0).handbackMinutes;
    expect(sure.map((value, k) => value - never[k]!)).toEqual(
      new Float64Array(sure.length).fill(40),
    );
    const maybe = late(0.5).outlook.onTime.probability;
    expect(maybe).toBeLessThan(late(0).outlook.onTime.probability);
    expect(maybe).toBeGreaterThan(late(1).outlook.onTime.probability);
  });

  it('stretches with a common factor', () => {
    const base = handback(plan, tight, placements, options).simulation;
    const slow = handback(plan, tight, placements, {
      ...options,
      commonFactor: { low: 1, likely: 1.1, high: 1.4 },
    }).simulation;
    expect(slow.outlook.expectedOverrunMinutes).toBeGreaterThan(
      base.outlook.expectedOverrunMinutes,
    );
  });

  it('takes no one back to another order on the crane', () => {
    const crane = [{ resource: 'crane', amount: 1 }];
    const own = aPlan(
      [
        anActivity('A', whole(100, 50, 200), { resources: crane }),
        anActivity('B', whole(50), { resources: crane }),
      ],
      { resources: [{ id: 'crane', availability: [{ capacity: 1 }] }] },
    );
    const two = [placed('A', 30, 130), placed('B', 130, 180)];
    const { handbackMinutes } = handback(own, aWindow(), two, options).simulation;
    expect(handbackMinutes[0]!).toBeGreaterThan(30 + 50 + 50 + 25);
  });
});

describe('how many units', () => {
  const piles: UnitWork = {
    kind: 'units',
    units: 8,
    done: 0,
    minutesPerUnit: 40,
    setUpMinutes: 20,
    makeSafeMinutes: 15,
    spread: { low: 30, high: 90 },
  };
  const own = aPlan([anActivity('PILE', piles)]);
  const result = handback(own, aWindow(), [placed('PILE', 30, 385, 8)], options);

  it('gives a chance for each number that never rises with more', () => {
    const { chances, unitsWithinConfidence } = result.units[0]!;
    expect(chances.map((chance) => chance.units)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    chances.slice(1).forEach((chance, k) => {
      expect(chance.onTime.probability).toBeLessThanOrEqual(chances[k]!.onTime.probability);
    });
    expect(chances[0]!.onTime.probability).toBe(1);
    expect(chances[7]!.onTime.probability).toBe(result.simulation.outlook.onTime.probability);
    expect(unitsWithinConfidence).toBeGreaterThan(3);
    expect(unitsWithinConfidence).toBeLessThan(8);
  });
});

describe('during the shift', () => {
  it('forecasts from what has happened, and what was written down implies what was not', () => {
    const { live, cutOffs } = handback(plan, aWindow(), placements, {
      ...options,
      at: at(200),
      actuals: [
        { activity: 'CUT', startedAt: at(45), finishedAt: at(190) },
        { activity: 'LIFT', startedAt: at(195) },
      ],
    });
    expect(minute(live!.forecastHandback)).toBe(195 + 90 + 30);
    expect(live!.marginLeftMinutes).toBe(480 - 315);
    expect(cutOffs.find((off) => off.name === 'Place protection')!.state).toBe('done');
    expect(cutOffs.find((off) => off.name === 'Activity LIFT')!.state).toBe('begun');
    expect(live!.nextCutOff!.name).toBe('Inspect and test');
  });

  it('starts nothing before now', () => {
    const { live } = handback(plan, aWindow(), placements, { ...options, at: at(60), actuals: [] });
    expect(minute(live!.forecastHandback)).toBe(60 + 30 + 120 + 90 + 30);
    expect(live!.nextCutOff!.name).toBe(grantStep);
  });

  it('draws the rest of begun work knowing how long it has lasted', () => {
    const single = aPlan([cut], { rules: rulesWith({ leadOut: [] }) });
    const { simulation } = handback(single, aWindow(), [placements[0]!], {
      ...options,
      runs: 20_000,
      at: at(30 + 150),
      actuals: [{ activity: 'CUT', startedAt: at(30) }],
    });
    // Triangular 100, 120, 180 beyond 150: P(X > x) falls as (180 - x)^2, so half of the rest is at 180 - 30 / sqrt 2.
    const median = simulation.handbackMinutes[10_000]!;
    expect(median).toBeCloseTo(30 + 180 - 30 / Math.SQRT2, 0);
    expect(simulation.handbackMinutes[0]!).toBeGreaterThanOrEqual(180);
  });

  it('says when work has outrun its longest estimate, and takes a fresh one', () => {
    const live = (left: boolean) =>
      handback(plan, aWindow(), placements, {
        ...options,
        at: at(250),
        actuals: [
          {
            activity: 'CUT',
            startedAt: at(30),
            ...(left && { minutesLeft: { low: 20, likely: 30, high: 50 } }),
          },
        ],
      }).live!;
    expect(live(false).beyondEstimate).toEqual(['Activity CUT']);
    expect(live(true).beyondEstimate).toEqual([]);
    expect(minute(live(true).forecastHandback)).toBe(250 + 30 + 90 + 30);
  });

  it('counts units done and says how many to leave so as to be on time', () => {
    const piles: UnitWork = {
      kind: 'units',
      units: 8,
      done: 0,
      minutesPerUnit: 40,
      setUpMinutes: 20,
      makeSafeMinutes: 15,
      spread: { low: 35, high: 50 },
    };
    const own = aPlan([anActivity('PILE', piles)]);
    const result = handback(own, aWindow(), [placed('PILE', 30, 385, 8)], {
      ...options,
      at: at(300),
      actuals: [{ activity: 'PILE', startedAt: at(40), unitsDone: 3, unitsAt: at(290) }],
    });
    // Unit 4 has lasted 10 of its 40 minutes, four more follow, then 15 to make safe and 30 to inspect.
    expect(minute(result.live!.forecastHandback)).toBe(300 + 30 + 4 * 40 + 15 + 30);
    expect(result.live!.verdict).toBe('overrun');
    const { advice, options: ways } = result.live!;
    expect(advice).toMatchObject({ say: 'more', activity: 'PILE', more: 2, leaveOut: [] });
    const best = ways.find((option) => option.units === 5)!;
    expect(best).toMatchObject({ activity: 'PILE', more: 2, reaches: true, condition: '' });
    expect(best.marginMinutes).toBe(480 - (300 + 30 + 40 + 15 + 30));
    // Nobody said that unit 4 has begun, so a stop now is a way on, told with what must be so for it.
    expect(ways.map((option) => option.more)).toEqual([5, 4, 3, 2, 1, 0]);
    const stop = ways.at(-1)!;
    expect(stop.condition).toContain('unit 4');
    expect(stop.marginMinutes).toBe(480 - (300 + 15 + 30));
  });

  it('offers whole work only where its row says that it may wait, with what waits for it', () => {
    const paint = anActivity('PAINT', whole(200), { after: [link('LIFT', 10)], mayWait: true });
    const three = [...placements, placed('PAINT', 250, 450)];
    const seen = { at: at(160), actuals: [{ activity: 'CUT', startedAt: at(100) }] };
    const waysOf = (activities: readonly Activity[]) =>
      handback(aPlan(activities), aWindow(), three, { ...options, ...seen }).live!;
    const { options: ways, advice } = waysOf([cut, lift, paint]);
    expect(ways.map((option) => option.leaveOut)).toEqual([[], ['PAINT']]);
    expect(advice).toMatchObject({ say: 'carry-on', leaveOut: ['PAINT'] });
    // 60 minutes of the cutting out are left, then lifting in and inspection: no curing for what is left out.
    expect(ways[1]!.marginMinutes).toBe(480 - (160 + 60 + 90 + 30));
    // Lifting in may wait as well: painting waits for it and goes with it.
    const both = waysOf([cut, { ...lift, mayWait: true }, paint]);
    expect(both.options.map((option) => option.leaveOut)).toContainEqual(['LIFT', 'PAINT']);
    // It makes good what was cut out: it stays, whatever its own row says.
    const bound = waysOf([{ ...cut, madeGoodBy: ['LIFT'] }, { ...lift, mayWait: true }, paint]);
    expect(bound.options.flatMap((option) => option.leaveOut)).not.toContain('LIFT');
    expect(bound.notOffered).toMatchObject([{ activity: 'LIFT' }]);
    expect(waysOf([cut, lift, { ...paint, mayWait: undefined } as never]).options).toHaveLength(1);
  });
});

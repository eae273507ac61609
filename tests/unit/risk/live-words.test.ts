import { describe, expect, it } from 'vitest';
import { addMinutes, minutesBetween } from '../../../src/calendar/index.js';
import type { Placement } from '../../../src/model/index.js';
import {
  canShow,
  chanceText,
  handback,
  handedBackStep,
  lineGrantStep,
  recordedOverruns,
  type Actual,
  type HandbackResult,
  type PlanEvent,
} from '../../../src/risk/index.js';
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

const rules = rulesWith({
  leadIn: [{ step: 'Protect', minutes: 30 }],
  leadOut: [{ step: 'Test', minutes: 20 }],
  margin: { minutes: 45 },
  handback: { chance: 0.95 },
});
const panels = anActivity(
  'LAY',
  {
    kind: 'units',
    units: 4,
    done: 0,
    minutesPerUnit: 60,
    setUpMinutes: 0,
    makeSafeMinutes: 10,
    spread: { low: 50, high: 90 },
  },
  { madeGoodBy: 'none', lines: ['Up'] },
);
const paint = anActivity('PAINT', whole(60, 50, 90), {
  madeGoodBy: 'none',
  mayWait: true,
  lines: ['Down'],
});
const window = aWindow({ lines: ['Up', 'Down'] });
const visits: readonly Placement[] = [placed('LAY', 30, 280, 4), placed('PAINT', 30, 90)];
const look = (
  minute: number | null,
  actuals: readonly Actual[] = [],
  over: { events?: readonly PlanEvent[]; runs?: number; end?: number } = {},
): HandbackResult =>
  handback(
    aPlan([panels, paint], { rules, windows: [window] }),
    { ...window, end: at(over.end ?? 480) },
    visits,
    {
      seed: 4,
      runs: over.runs ?? 4000,
      ...(over.events && { events: over.events }),
      ...(minute !== null && { at: at(minute), actuals }),
    },
  );
const done = (units: number, minute: number): Actual => ({
  activity: 'LAY',
  startedAt: at(30),
  unitsDone: units,
  unitsAt: at(minute),
});

describe('one verdict during the shift', () => {
  it('is of the margin that is left, in the window and in its forecast alike', () => {
    const late = look(300, [done(1, 300)]);
    // 300 + three of 60, 10 to make safe, 20 to test: 510 of 480.
    expect(late.live!.marginLeftMinutes).toBe(-30);
    expect([late.verdict, late.marginVerdict, late.live!.verdict]).toEqual([
      'overrun',
      'overrun',
      'overrun',
    ]);
    // The margin that the chance would need is counted from the same forecast.
    const p95 = Math.ceil(late.simulation.handbackMinutes[Math.ceil(0.95 * 4000) - 1]!);
    expect(late.marginForChanceMinutes).toBe(p95 - 510);
  });

  it('says stop, not one more, where one more brings nothing', () => {
    const { advice } = look(470, [done(2, 300)]).live!;
    expect(advice).toMatchObject({ say: 'stop', more: 0 });
    expect(advice.why).toContain('say now that the line may be handed back late');
  });

  it('does not say that it may be late once the booked end has passed', () => {
    const { advice } = look(490, [done(2, 300)]).live!;
    expect(advice.why).toContain('The time to hand back has passed');
    expect(advice.why).not.toContain('may be handed back late');
  });
});

describe('a line that has been handed back', () => {
  it('has no advice, no way on and no cut-off left, and its verdict is a fact', () => {
    const over = look(470, [done(2, 300), { step: handedBackStep, finishedAt: at(460) }]);
    expect(over.live!.advice).toMatchObject({ say: 'over', more: null });
    expect(over.live!.advice.why).toBe('Handed back 20 min before the booked end.');
    expect(over.live!.options).toEqual([]);
    expect(over.live!.passedCutOffs).toEqual([]);
    expect(over.live!.marginLeftMinutes).toBe(20);
    expect([over.verdict, over.simulation.outlook.onTime.probability]).toEqual(['eaten', 1]);
  });

  it('is not so before the moment that was written down', () => {
    expect(look(450, [{ step: handedBackStep, finishedAt: at(460) }]).live!.advice.say).not.toBe(
      'over',
    );
  });
});

describe('a line that is asked for before its booked end', () => {
  const asked = look(200, [done(2, 200), { step: handedBackStep, wantedBy: at(350) }]);

  it('has the chance, margin and advice of a window that ends then; the booked end stays', () => {
    const shorter = look(200, [done(2, 200)], { end: 350 });
    expect(asked.live!.askedBack).toEqual({
      by: at(350),
      onTime: shorter.simulation.outlook.onTime,
      marginLeftMinutes: shorter.live!.marginLeftMinutes,
      advice: shorter.live!.advice,
    });
    expect(asked.live!.askedBack!.onTime.probability).toBeLessThan(0.5);
    expect(asked.bookedEnd).toBe(at(480));
    expect(asked.live!.marginLeftMinutes).toBe(480 - (200 + 120 + 10 + 20));
  });

  it('says so where that is no earlier than the booked end', () => {
    const { live } = look(200, [{ step: handedBackStep, wantedBy: at(480) }]);
    expect(live!.askedBack).toBe(null);
    expect(live!.doubts.map((doubt) => doubt.code)).toContain('asked-too-late');
  });
});

describe('lines that are granted one by one', () => {
  const up: Actual = { step: lineGrantStep('Up'), finishedAt: at(10) };
  const protectedUp: Actual = { step: 'Protect', startedAt: at(10), finishedAt: at(40) };
  const stateOf = (result: HandbackResult, name: string): string =>
    result.cutOffs.find((cutOff) => cutOff.name === name)!.state;

  it('hold up only the work on the line that is still to come', () => {
    const result = look(40, [
      up,
      protectedUp,
      { step: lineGrantStep('Down'), expectedAt: at(400) },
    ]);
    // Down at 400, 30 to protect there, 60 to paint, 20 to test.
    expect(minutesBetween(nightStart, result.live!.forecastHandback)).toBe(510);
    expect(stateOf(result, 'Line Up granted')).toBe('done');
    expect(stateOf(result, 'Line Down granted')).toBe('to-come');
    // Without the promise it is counted as granted now, and that is said; the panels decide then.
    const unsaid = look(40, [up, protectedUp]);
    expect(minutesBetween(nightStart, unsaid.live!.forecastHandback)).toBe(40 + 240 + 10 + 20);
    expect(unsaid.live!.doubts).toMatchObject([{ code: 'line-not-granted' }]);
  });

  it('are not protected by what was done before they were granted', () => {
    const both = look(200, [
      up,
      protectedUp,
      { step: lineGrantStep('Down'), finishedAt: at(190) },
      done(4, 199),
    ]);
    expect(stateOf(both, 'Protect')).toBe('begun');
    // Now at 200: 30 to protect Down, 60 to paint, 20 to test.
    expect(minutesBetween(nightStart, both.live!.forecastHandback)).toBe(310);
  });

  it('are all granted where the whole is', () => {
    const { live, cutOffs } = look(40, [{ step: 'Possession granted', finishedAt: at(5) }]);
    expect(live!.doubts).toEqual([]);
    expect(cutOffs.some((cutOff) => cutOff.name.startsWith('Line '))).toBe(false);
  });
});

describe('what is recorded and cannot be so', () => {
  it.each<readonly [string, Actual]>([
    ['not-here', { activity: 'OTHER', startedAt: at(10) }],
    ['not-repeated', { activity: 'PAINT', startedAt: at(40), unitsDone: 2 }],
    ['more-units', done(9, 100)],
    ['not-yet', { activity: 'PAINT', startedAt: at(300) }],
    ['before-window', { activity: 'PAINT', startedAt: at(-5) }],
  ])('is told as %s', (code, actual) => {
    expect(look(200, [actual]).live!.doubts.map((doubt) => doubt.code)).toContain(code);
  });

  it('and so is a grant that nobody wrote down', () => {
    expect(look(200).live!.doubts.map((doubt) => doubt.code)).toEqual(['not-granted']);
  });
});

describe('words for what a finite number of runs shows', () => {
  it('bound what never occurred by three over the runs', () => {
    // 0.97^100 = 0.048 and 0.994^500 = 0.049: with a chance so low, so many runs in a row are unlikely.
    for (const [runs, text] of [
      [100, 'over 97.0 %'],
      [500, 'over 99.4 %'],
      [3000, 'over 99.9 %'],
      [1_000_000, 'over 99.9 %'],
      [3, 'all of 3 runs'],
    ] as const)
      expect(chanceText(1, runs)).toBe(text);
    expect(chanceText(0, 500)).toBe('under 0.6 %');
    expect(chanceText(0, 1)).toBe('none of 1 runs');
    expect(chanceText(0.9, 10)).toBe('90.0 %');
  });

  it('call nothing held that so few cannot show', () => {
    expect([canShow(0.95, 59), canShow(0.95, 60)]).toEqual([false, true]);
    expect(look(null, [], { runs: 20, end: 900 }).verdict).toBe('chance-low');
    expect(look(null, [], { runs: 200, end: 900 }).verdict).toBe('held');
  });
});

// Recorded overruns: Rijden de Treinen open data (CC BY 4.0), quoted in the file that holds them.
describe('something that goes wrong for as long as recorded overruns lasted', () => {
  const wrong = (probability: number): PlanEvent => ({
    name: 'Something goes wrong',
    probability,
    delay: 'recorded',
    step: handedBackStep,
  });

  it('has their P50, P80, P90, P95 and length, by linear interpolation between ranks', () => {
    const rank = (p: number): number => {
      const place = p * (recordedOverruns.length - 1);
      const [a, b] = [recordedOverruns[Math.floor(place)]!, recordedOverruns[Math.ceil(place)]!];
      return a + (place % 1) * (b - a);
    };
    expect(recordedOverruns).toHaveLength(97);
    expect([0.5, 0.8, 0.9, 0.95, 1].map((p) => Math.round(rank(p)))).toEqual([
      75, 194, 364, 610, 1696,
    ]);
    expect(rank(0.95) / rank(0.5)).toBeCloseTo(8.1, 1);
  });

  it('takes from the chance what lies beyond the margin, within three standard errors', () => {
    const sure = handback(
      aPlan([anActivity('A', whole(100), { madeGoodBy: 'none' })], { rules }),
      aWindow({ end: at(300) }),
      [placed('A', 30, 130)],
      { seed: 9, runs: 40_000, events: [wrong(0.3)] },
    );
    // Back at 150 of 300 when nothing happens: late where the delay is above 150 minutes.
    const above = recordedOverruns.findIndex((overrun) => overrun > 150);
    const [from, to] = [recordedOverruns[above - 1]!, recordedOverruns[above]!];
    const within = (above - 1 + (150 - from) / (to - from)) / 96;
    const { probability, standardError } = sure.simulation.outlook.onTime;
    expect(Math.abs(probability - (0.7 + 0.3 * within))).toBeLessThan(3 * standardError);
    expect(sure.cutOffs.map((cutOff) => cutOff.name)).not.toContain(handedBackStep);
    // The thick tail: one run in a hundred is later than any spread of the work could make it.
    expect(sure.simulation.handbackMinutes.at(-1)).toBeGreaterThan(300 + 600);
    expect(sure.plannedHandback).toBe(addMinutes(nightStart, 150));
  });

  it('delays the handback by nothing where it has no chance', () => {
    const none = look(null, [], { events: [wrong(0)] }).simulation.outlook.onTime;
    expect(none).toEqual(look(null).simulation.outlook.onTime);
  });
});

describe('work without a title', () => {
  it('is called by its id in advice, cut-offs and what has outrun its estimate', () => {
    const work = anActivity('G4', whole(100), { title: '', madeGoodBy: 'none' });
    const result = handback(aPlan([work]), aWindow(), [placed('G4', 30, 130)], {
      ...{ seed: 1, runs: 100, at: at(200) },
      actuals: [{ activity: 'G4', startedAt: at(30) }],
    });
    expect(result.live!.advice.why).toContain(' G4 has outrun its longest estimate');
    expect(result.cutOffs.map((cutOff) => cutOff.name)).toContain('G4');
  });
});

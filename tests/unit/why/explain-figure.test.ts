import { beforeAll, describe, expect, it } from 'vitest';
import { explainFigure, type ShownResults } from '../../../components/why/explain-figure.js';
import type { Explanation } from '../../../components/why/explanation.js';
import type { Figure } from '../../../components/shared/figure-ask-event.js';
import { momentText } from '../../../components/shared/format.js';
import { english } from '../../../src/engine/english/say.js';
import { loadSentences } from '../../../components/shared/said.js';
import { createInlineEngine } from '../../../src/engine/index.js';
import { durationText, MINUTE } from '../../../src/calendar/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../../helpers/documents.js';

const document = aDocument(
  'Two nights',
  {
    windows: tableOf(
      'windows.csv',
      `window,start,end
W1,2027-03-02 23:00,2027-03-03 05:00
W2,2027-03-27 23:00,2027-03-28 06:00`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,after,minutes,minutes low,minutes high,units,minutes per unit,key date
Deck,D1,Cut out,,200,150,290,,,2027-03-06
Track,T1,Renew sleepers,,,,,8,40,2027-04-06`,
    ),
  },
  {
    rules: stepRules({
      leadIn: { low: 15, high: 60 },
      leadOut: { low: 15, high: 40 },
      margin: { source: 'Invented for this test' },
    }),
    prices: minuteBook,
  },
);

let shown: ShownResults;

beforeAll(async () => {
  const engine = createInlineEngine();
  const results = await engine.recompute(document);
  expect(results.faults.filter((fault) => fault.severity === 'error')).toEqual([]);
  const allocation = await engine.allocate(document, { seconds: 1 });
  const before = { ...allocation, windowsUsed: allocation.windowsUsed + 1 };
  const { placements } = allocation;
  const handbacks = await engine.handback(document, { placements, seed: 7, runs: 2000 });
  const first = handbacks[0]!;
  const price = await engine.price(document, {
    window: first.window,
    overrunMinutes: 12,
    maxMinutes: 60,
    placements,
    handbackMinutes: first.simulation.handbackMinutes,
  });
  const book = await engine.book(document, { now: Date.UTC(2026, 10, 1) });
  shown = { results, handbacks, price, book, allocation, before, zone: document.zone };
});

const told = (figure: Figure): Explanation => {
  const found = explainFigure(figure, shown);
  if (!found) throw new Error(`nothing told of ${JSON.stringify(figure)}`);
  return found;
};
const row = (explanation: Explanation, label: string | RegExp) =>
  explanation.rows.find((each) =>
    typeof label === 'string' ? each.label === label : label.test(each.label),
  );

describe('where a handback figure comes from', () => {
  it('makes the margin of planned clear, lead-out and booked end, with the rule and its source', () => {
    for (const result of shown.handbacks!) {
      const explanation = told({ of: 'handback-margin', window: result.window });
      const minutes = (result.bookedEnd - result.plannedClear) / MINUTE - result.leadOutMinutes;
      expect(explanation.figure).toBe(durationText(minutes));
      expect(explanation.rule?.source).toBe('Invented for this test');
      expect(explanation.tone).toBe(result.marginMinutes >= 30 ? 'good' : 'bad');
      expect(row(explanation, 'Required')?.figure).toBe('30 min');
      expect(explanation.links[0]?.place).toEqual({ to: 'window', id: result.window });
    }
  });

  it('tells each cut-off with and without the margin, which lies between the two', () => {
    for (const result of shown.handbacks!)
      for (const [index, cutOff] of result.cutOffs.entries()) {
        const explanation = told({ of: 'cut-off', window: result.window, index });
        const { zone } = shown.results!.plan.windows.find((each) => each.id === result.window)!;
        expect(explanation.figure).toBe(momentText(cutOff.latestStart, zone));
        expect(row(explanation, /at the booked end/)?.note).toMatch(/^30 min later/);
        expect(explanation.links.at(-1)?.place.to).toBe(
          cutOff.activity === undefined ? 'rule' : 'activity',
        );
      }
  });

  it('counts the chance on time from the runs themselves', () => {
    const result = shown.handbacks![0]!;
    const window = shown.results!.plan.windows.find((each) => each.id === result.window)!;
    const gross = (result.bookedEnd - window.start) / MINUTE;
    const onTime = result.simulation.handbackMinutes.filter((each) => each <= gross).length;
    expect(row(told({ of: 'on-time', window: result.window }), 'Runs on time')?.figure).toBe(
      `${onTime.toLocaleString('en-GB')} of 2,000`,
    );
  });

  it('says of every figure of the simulation how many runs and which seed', () => {
    const { window } = shown.handbacks![0]!;
    for (const figure of [
      { of: 'on-time', window },
      { of: 'p-value', window, percent: 80 },
      { of: 'expected-overrun', window },
      { of: 'later-than', window, minutes: 60 },
    ] as const) {
      const explanation = told(figure);
      expect(row(explanation, 'Runs')?.figure).toBe('2,000');
      expect(row(explanation, 'Seed')?.figure).toBe('7');
    }
    for (const of of ['on-time', 'expected-overrun'] as const)
      expect(row(told({ of, window }), 'Standard error')?.figure).toMatch(/^\u00b1\d/);
  });

  it('takes a P-value from its rank among the runs', () => {
    const { window, simulation } = shown.handbacks![0]!;
    const start = shown.results!.plan.windows.find((each) => each.id === window)!.start;
    const explanation = told({ of: 'p-value', window, percent: 90 });
    expect(row(explanation, /counted to/)?.figure).toBe('1,800 of 2,000');
    const ranked = Math.ceil(simulation.handbackMinutes[1799]!);
    expect(explanation.figure).toBe(momentText(start + ranked * MINUTE, 'Europe/London'));
  });

  it('shows where to stop repeated work', () => {
    const result = shown.handbacks!.find((each) => each.units.length > 0)!;
    const [outlook] = result.units;
    const explanation = told({ of: 'units-on-time', window: result.window, activity: 'T1' });
    expect(explanation.figure).toBe(String(outlook!.unitsWithinConfidence));
    expect(explanation.rows.filter((each) => each.label.startsWith('After')).length).toBe(
      outlook!.chances.length,
    );
  });
});

describe('where a cost comes from', () => {
  beforeAll(() => loadSentences('en'));

  it('sums the counted heads to the total, and shows formula and source of each', () => {
    const { at } = shown.price!;
    const total = told({ of: 'cost-total' });
    const sum = at.rows
      .filter((item) => item.counted)
      .reduce((pence, item) => pence + Math.round(Number(item.amount) * 100), 0);
    const figure = row(total, 'Total of what is counted')!.figure;
    expect(Number(figure.replaceAll(/[^\d.]/g, '')) * 100).toBe(sum);
    expect(sum).toBeGreaterThan(0);
    for (const item of at.rows) {
      const head = told({ of: 'cost-row', code: item.code });
      expect(head.rule).toMatchObject({ text: english(item.formula), source: item.source });
      expect(head.rows.length).toBe(item.inputs.length);
    }
  });

  it('tells the expected cost with its standard error and runs', () => {
    const explanation = told({ of: 'cost-expected' });
    expect(row(explanation, 'Runs')?.figure).toBe('2,000');
    expect(row(explanation, 'Expected cost')?.note).toContain('standard error');
    expect(told({ of: 'cost-p', percent: 95 }).figure).toBe(row(explanation, 'P95 cost')?.figure);
  });
});

describe('where a date comes from', () => {
  it('tells the lead time and its source for every milestone', () => {
    for (const item of shown.book!.milestones) {
      const { window, milestone } = item;
      const found = told({ of: 'booking-date', window, milestone });
      expect(found.figure).toBe(momentText(item.due, item.zone));
      expect(found.rule?.source).toContain(item.source);
    }
    expect(shown.book!.milestones.length).toBeGreaterThan(0);
  });

  it('tells programme float from due and forecast', () => {
    for (const date of shown.allocation!.keyDates) {
      const explanation = told({ of: 'key-date', package: date.package });
      expect(row(explanation, 'Due')?.figure).toBe(momentText(date.due, 'Europe/London'));
      expect(explanation.tone).toBe(date.met ? 'good' : 'bad');
    }
    expect(shown.allocation!.keyDates.length).toBe(2);
  });
});

describe('where figures of plans come from', () => {
  it('adds up the units of all visits', () => {
    const explanation = told({ of: 'units-placed', activity: 'T1' });
    const sum = explanation.rows.reduce((all, each) => all + Number(each.figure), 0);
    expect(explanation.figure).toBe(`${sum} of 8`);
  });

  it('tells both sides of a comparison and the change', () => {
    const explanation = told({ of: 'compare', figure: 'windows-used' });
    expect(explanation.figure).toBe('\u22121');
    for (const figure of ['finish', 'dates-met', 'left-over', 'quality'] as const)
      expect(told({ of: 'compare', figure }).rows.length).toBeGreaterThanOrEqual(2);
    expect(told({ of: 'compare-key-date', package: 'Deck' }).figure).toBe('0 min');
  });
});

describe('a figure that the results do not hold', () => {
  it.each<Figure>([
    { of: 'handback-margin', window: 'W9' },
    { of: 'cut-off', window: 'W1', index: 99 },
    { of: 'cost-row', code: 'none' },
    { of: 'key-date', package: 'none' },
    { of: 'units-placed', activity: 'D1' },
    { of: 'units-on-time', window: 'W1', activity: 'none' },
  ])('is not explained: %o', (figure) => {
    expect(explainFigure(figure, shown)).toBeNull();
  });

  it('nor is any before there are results', () => {
    const none: ShownResults = {
      results: null,
      handbacks: null,
      price: null,
      book: null,
      allocation: null,
      before: null,
      zone: 'UTC',
    };
    expect(explainFigure({ of: 'cost-total' }, none)).toBeNull();
    expect(explainFigure({ of: 'on-time', window: 'W1' }, none)).toBeNull();
  });
});

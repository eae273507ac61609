import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/handback/define.js';
import type { HandbackRecordEvent } from '../../components/handback/handback-record-event.js';
import type { PossessionHandback } from '../../components/handback/handback.js';
import { histogramOf } from '../../components/handback/histogram.js';
import { shiftLines, type HandbackLogEntry } from '../../components/handback/shift-lines.js';
import { exactClock, percentText } from '../../components/handback/times.js';
import type { WindowSelectEvent } from '../../components/ribbon/window-select-event.js';
import { addMinutes, MINUTE } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/types.js';
import { cautions } from '../../src/model/index.js';
import { handback, type HandbackOptions, type ShiftLog } from '../../src/risk/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { deckPlan, deckVisits } from './support/deck-night.js';
import { all, find, text } from './support/look.js';
import { at, aWindow, press, zone } from './support/samples.js';

const held = aWindow('H1', '2027-02-09 23:00', '2027-02-10 05:00');
const eaten = aWindow('E2', '2027-02-10 23:00', '2027-02-11 03:20');
const late = aWindow('L3', '2027-02-11 23:00', '2027-02-12 02:50');
const windows = [held, eaten, late];

const plan = deckPlan(windows);
const placements = windows.flatMap(deckVisits);
const options: HandbackOptions = {
  seed: 7,
  runs: 2000,
  commitments: [{ activity: 'CUT', irreversible: true, reinstatementMinutes: 60 }],
};
const results: readonly HandbackResult[] = windows.map((one) =>
  handback(plan, one, placements, options),
);
/** Two hours and three quarters into the first window, with the cutting barely begun. */
const moment = addMinutes(held.start, 165);
const liveResult = handback(plan, held, placements, {
  ...options,
  at: moment,
  actuals: [
    { step: 'Place protection', startedAt: held.start, finishedAt: addMinutes(held.start, 60) },
    { activity: 'CUT', startedAt: addMinutes(held.start, 150) },
  ],
});
const log: ShiftLog = [
  {
    id: 'a',
    at: held.start,
    enteredAt: addMinutes(held.start, 1),
    by: 'J. Marl',
    event: { kind: 'step-started', step: 'Place protection' },
  },
  {
    id: 'b',
    at: addMinutes(held.start, 66),
    enteredAt: addMinutes(held.start, 67),
    by: 'J. Marl',
    event: { kind: 'step-finished', step: 'Place protection' },
  },
  {
    id: 'c',
    at: addMinutes(held.start, 60),
    enteredAt: addMinutes(held.start, 70),
    by: 'R. Fenn',
    event: { kind: 'step-finished', step: 'Place protection' },
    corrects: 'b',
  },
];

const shown = (selected = 'H1'): Promise<PossessionHandback> =>
  fixture(
    html`<possession-handback
      .results=${results}
      .windows=${windows}
      .selectedWindow=${selected}
    ></possession-handback>`,
  );
const shownLive = (now = moment): Promise<PossessionHandback> =>
  fixture(
    html`<possession-handback
      .results=${[liveResult]}
      .windows=${windows}
      .selectedWindow=${'H1'}
      .now=${now}
      .log=${log}
    ></possession-handback>`,
  );

describe('possession-handback', () => {
  it('says each verdict in a word and a shape of its own', async () => {
    const el = await shown();
    const tags = all(el, '[role=option] .verdict');
    expect(tags.map(text)).to.deep.equal(['held', 'eaten into', 'overrun']);
    const shapes = tags.map((one) => one.querySelector('svg')!.innerHTML);
    expect(new Set(shapes).size).to.equal(3);
  });

  it('shows the margin against what is required', async () => {
    const el = await shown();
    expect(all(el, '.row .margin').map(text)).to.deep.equal([
      'Handback margin 1 h 50 of 45 min required',
      'Handback margin 10 min of 45 min required',
      'Handback margin 20 min late of 45 min required',
    ]);
  });

  it('shows the chance of handing back on time with its standard error', async () => {
    const el = await shown();
    const { probability, standardError } = results[1]!.simulation.outlook.onTime;
    const told = text(all(el, '[role=option]')[1]!);
    expect(told).to.contain(
      `${(100 * probability).toFixed(1)} % ±${(100 * standardError).toFixed(1)} standard error`,
    );
  });

  it('tells that a window is picked by click', async () => {
    const el = await shown();
    setTimeout(() => all(el, '[role=option]')[2]!.click());
    const event = await oneEvent<WindowSelectEvent>(el, 'possession-window-select');
    expect(event.window).to.equal('L3');
    expect(el.selectedWindow).to.equal('L3');
  });

  for (const [key, from, to] of [
    ['ArrowDown', 'H1', 'E2'],
    ['ArrowUp', 'E2', 'H1'],
    ['Home', 'L3', 'H1'],
    ['End', 'H1', 'L3'],
    ['ArrowDown', 'L3', 'L3'],
    ['ArrowDown', '', 'H1'],
  ] as const)
    it(`${key} goes from ${from || 'no window'} to ${to} and takes the focus along`, async () => {
      const el = await shown(from);
      press(find(el, '[role=listbox]'), key);
      await el.updateComplete;
      await el.updateComplete;
      expect(el.selectedWindow).to.equal(to);
      expect((el.shadowRoot!.activeElement as HTMLElement).dataset['id']).to.equal(to);
      expect(all(el, '[role=option][tabindex="0"]')).to.have.length(1);
      expect(text(find(el, 'article h2'))).to.contain(to);
    });

  it('draws every run of the simulation once, none both on time and late', async () => {
    const el = await shown('L3');
    const bars = all(el, 'details tbody tr').map((row) => ({
      runs: Number(row.children[1]!.textContent!.replaceAll(/\D/g, '')),
      late: row.textContent!.includes('late'),
    }));
    const { simulation } = results[2]!;
    const sum = (late: boolean): number =>
      bars.filter((one) => one.late === late).reduce((total, one) => total + one.runs, 0);
    expect(sum(false) + sum(true)).to.equal(simulation.runs);
    expect(sum(false) / simulation.runs).to.equal(simulation.outlook.onTime.probability);
    expect(all(el, 'rect.bar')).to.have.length(bars.length);
  });

  it('puts a finish on the minute of the deadline on the side that is on time', () => {
    const { bars } = histogramOf(Float64Array.of(59.5, 60, 60.01, 70), 60, 20);
    const onTime = bars.filter((one) => !one.late).reduce((sum, one) => sum + one.runs, 0);
    expect(onTime).to.equal(2);
  });

  it('marks what runs past the booked end, and only where something does', async () => {
    const el = await shown('L3');
    expect(el.renderRoot.querySelector('.beyond')).to.not.equal(null);
    expect(el.renderRoot.querySelector('.edge.margin')).to.equal(null);
    el.selectedWindow = 'H1';
    await el.updateComplete;
    expect(el.renderRoot.querySelector('.beyond')).to.equal(null);
    expect(el.renderRoot.querySelector('.edge.margin')).to.not.equal(null);
  });

  it('gives by when each step must start, to keep the margin and to be on time', async () => {
    const el = await shown();
    const row = all(el, '.cut-offs tbody tr').find((one) =>
      text(one).includes('Inspect and test'),
    )!;
    // 05:00 less 30 min of lead-out, and less 45 min of margin.
    expect(text(row)).to.contain('03:45');
    expect(text(row)).to.contain('04:30');
    expect(text(row)).to.contain('to come');
  });

  it('gives the point of no return and the latest abandonment', async () => {
    const el = await shown();
    // 05:00 less 90 min of work, 30 of lead-out, 45 of margin; 05:00 less 60 to put it back.
    expect(text(find(el, 'article .decisions tbody tr'))).to.equal(
      'Cut out the old deck 02:15, explain 04:00, explain',
    );
  });

  it('says how many units are within the chance aimed at', async () => {
    const el = await shown('E2');
    const { unitsWithinConfidence, chances } = results[1]!.units[0]!;
    expect(text(find(el, '.units p'))).to.contain(
      unitsWithinConfidence === 0
        ? 'Not even the fewest'
        : `${unitsWithinConfidence} with at least`,
    );
    expect(all(el, '.units tbody tr')).to.have.length(chances.length);
  });

  it('keeps every caution in sight with the figures', async () => {
    for (const el of [await shown(), await shownLive()]) {
      const told = find(el, '.screen .cautions');
      for (const one of cautions) expect(told.textContent).to.contain(one);
      expect(told.getBoundingClientRect().height).to.be.greaterThan(0);
    }
  });

  it('counts down to the next cut-off by the moment given, never showing more than there is', async () => {
    const next = liveResult.live!.nextCutOff!;
    const el = await shownLive(next.latestStart - 24.5 * MINUTE);
    expect(text(find(el, '.countdown'))).to.equal('in 24 min');
    el.now = next.latestStart - 0.5 * MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.countdown'))).to.equal('in less than 1 min');
    el.now = next.latestStart + 7 * MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.countdown'))).to.equal('7 min past');
    expect(text(find(el, '.next'))).to.contain('Still on time if begun by');
    el.now = next.onTimeStart + MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.next'))).to.contain('it hands back late');
  });

  it('goes on to the next cut-off as soon as the log says that the last one is begun', async () => {
    const el = await shownLive();
    const next = liveResult.live!.nextCutOff!;
    expect(text(find(el, '.next .what'))).to.equal(next.name);
    const started = { ...log[0]!, id: 'd', event: { kind: 'activity-started', activity: 'SET' } };
    el.log = [...log, started as HandbackLogEntry];
    await el.updateComplete;
    expect(next.activity).to.equal('SET');
    expect(text(find(el, '.next .what'))).to.equal('Inspect and test');
  });

  it('shows the forecast, and says when it is old', async () => {
    const el = await shownLive(moment + 5 * MINUTE);
    expect(text(find(el, '.huge'))).to.equal(exactClock(liveResult.live!.forecastHandback, zone));
    expect(text(find(el, '.as-of'))).to.contain('5 min ago');
    expect(el.renderRoot.querySelector('.old')).to.equal(null);
    el.now = moment + 20 * MINUTE;
    await el.updateComplete;
    expect(text(find(el, '.old'))).to.contain('old');
  });

  it('says what to drop, with what it brings', async () => {
    const el = await shownLive();
    const drops = liveResult.live!.toDrop;
    expect(drops.length).to.be.greaterThan(0);
    expect(all(el, '.drops li')).to.have.length(drops.length);
    expect(text(find(el, '.drops li'))).to.contain(percentText(drops[0]!.onTime.probability));
  });

  it('reports a start of work and a finish of a step, and leaves the time to the page', async () => {
    const el = await shownLive();
    const button = (label: string): HTMLElement =>
      all(el, '.record button').find((one) => text(one).includes(label))!;
    setTimeout(() => button('Started: Set bearings').click());
    const start = await oneEvent<HandbackRecordEvent>(el, 'possession-handback-record');
    expect([start.window, start.what, start.activity, start.step]).to.deep.equal([
      'H1',
      'started',
      'SET',
      undefined,
    ]);
    expect(start.composed && start.bubbles).to.equal(true);
    setTimeout(() => button('Finished: Inspect and test').click());
    const finish = await oneEvent<HandbackRecordEvent>(el, 'possession-handback-record');
    expect([finish.what, finish.activity, finish.step]).to.deep.equal([
      'finished',
      undefined,
      'Inspect and test',
    ]);
  });

  it('does not let the same thing be reported twice', async () => {
    const el = await shownLive();
    const record = (name: string): HTMLElement =>
      all(el, 'li.record').find((one) => text(one).includes(name))!;
    const open = (name: string): boolean[] =>
      [...record(name).querySelectorAll<HTMLButtonElement>('.buttons button')].map(
        (one) => !one.disabled,
      );
    expect(open('Place protection')).to.deep.equal([false, false]);
    expect(open('Cut out the old deck')).to.deep.equal([false, true]);
    expect(open('Set bearings')).to.deep.equal([true, true]);
    expect(text(record('Place protection'))).to.contain('Finished: Place protection 00:00');
  });

  it('keeps what is to be reported now on top, and folds away what is later and what is done', async () => {
    const el = await shownLive();
    const names = (css: string): string[] => all(el, `${css} .name strong`).map(text);
    expect(names('.next li.record')).to.deep.equal(['Set bearings']);
    expect(names('.live > .records > li')).to.deep.equal(['Cut out the old deck']);
    expect(names('.fold.later li.record')).to.deep.equal(['Inspect and test']);
    expect(names('.fold.done li.record')).to.include('Place protection');
    const shownNow = all(el, '.live li.record').filter((one) => one.checkVisibility());
    expect(shownNow).to.have.length(2);
    // Everything stays within reach: each row stands in the view once, folded or not.
    expect(new Set(names('.live li.record')).size).to.equal(liveResult.cutOffs.length);
    expect(all(el, '.live li.record')).to.have.length(liveResult.cutOffs.length);
  });

  it('says on each fold how much is behind it', async () => {
    const el = await shownLive();
    const told = all(el, '.fold > summary').map((one) => text(one));
    expect(told.filter((one) => /^(Later|Done|Log)/.test(one))).to.deep.equal([
      'Later in this shift 1',
      `Done so far ${all(el, '.fold.done li.record').length}`,
      'Log 2',
    ]);
    expect(text(find(el, '.rest > summary'))).to.equal('All windows, and every figure of H1');
  });

  it('fits a phone twice over, with figures, next cut-off and its buttons in the first sight', async () => {
    const el = await shownLive();
    el.style.setProperty('width', '390px');
    await el.updateComplete;
    const top = el.getBoundingClientRect().top;
    const bottom = (css: string): number => find(el, css).getBoundingClientRect().bottom - top;
    expect(bottom('.big')).to.be.below(400);
    expect(bottom('.next .buttons')).to.be.below(760);
    expect(bottom('.live')).to.be.below(2 * 844 + 400);
  });

  it('keeps a fold as a person left it when the log goes on', async () => {
    const el = await shownLive();
    const fold = find(el, '.fold.later') as HTMLDetailsElement;
    fold.open = true;
    const form = find(el, '.fold.later .earlier') as HTMLDetailsElement;
    form.open = true;
    el.log = [...log, { ...log[0]!, id: 'z', event: { kind: 'note', text: 'Rain' } }];
    await el.updateComplete;
    expect(fold.open && fold.isConnected && form.open && form.isConnected).to.equal(true);
  });

  it('offers the handback in sight once nothing is left to begin', async () => {
    const el = await shownLive();
    const handed = (): HTMLElement => find(el, '.handed');
    expect(handed().checkVisibility()).to.equal(false);
    el.log = [
      ...log,
      { ...log[0]!, id: 'x', event: { kind: 'activity-started', activity: 'SET' } },
      {
        ...log[0]!,
        id: 'y',
        event: { kind: 'step-started', step: 'Inspect and test', stage: 'lead-out' },
      },
    ] as HandbackLogEntry[];
    await el.updateComplete;
    expect(handed().checkVisibility()).to.equal(true);
  });

  it('has buttons large enough for a thumb', async () => {
    const el = await shownLive();
    for (const one of all(el, '.live details')) (one as HTMLDetailsElement).open = true;
    for (const one of all(el, '.live ol button, .live summary')) {
      const { width, height } = one.getBoundingClientRect();
      expect(Math.min(width, height)).to.be.at.least(48);
    }
  });

  it('shows a correction beside what was first written', async () => {
    const el = await shownLive();
    const line = find(el, '.log .was-corrected');
    expect(text(line.querySelector('.original s')!)).to.contain('00:06 Place protection');
    expect(text(line.querySelector('.correction')!)).to.contain('corrected to 00:00');
    expect(all(el, '.log li')).to.have.length(2);
  });

  it('takes a log whose corrections go round in a ring without hanging', () => {
    const ring: HandbackLogEntry[] = [
      { ...log[0]!, id: 'x', corrects: 'y' },
      { ...log[0]!, id: 'y', corrects: 'x' },
    ];
    expect(shiftLines(ring)).to.have.length(0);
  });

  it('shows the plan with its buttons when the shift is on and no forecast is there yet', async () => {
    const el = await shown();
    el.live = true;
    await el.updateComplete;
    expect(text(find(el, '.as-of'))).to.contain('No forecast yet');
    expect(text(find(el, '.huge'))).to.equal('03:10');
    expect(el.renderRoot.querySelector('.countdown')).to.equal(null);
  });

  it('has a sheet of paper that is hidden on screen', async () => {
    const el = await shown();
    const paper = find(el, '.paper');
    expect(getComputedStyle(paper).display).to.equal('none');
    const told = text(paper);
    for (const part of [
      'H1',
      'Europe/London',
      'Inspect and test',
      '2,000 simulated shifts, seed 7',
      'Who decides'.toLowerCase(),
      'Prepared by',
      ...cautions,
    ])
      expect(told).to.contain(part);
    expect(all(el, '.paper .steps tbody tr')).to.have.length(results[0]!.cutOffs.length);
    const printed = (el.constructor as typeof PossessionHandback).styles
      .map((sheet) => sheet.cssText)
      .join('');
    expect(printed).to.match(/@media print/);
  });

  it('tells a time that clocks show twice by its offset', () => {
    expect(exactClock(at('2026-10-25 01:30'), zone)).to.equal('01:30+01:00');
    expect(exactClock(at('2026-10-25 01:30') + 60 * MINUTE, zone)).to.equal('01:30+00:00');
    expect(exactClock(at('2026-10-25 02:30'), zone)).to.equal('02:30');
  });

  it('never rounds a chance to certainty', () => {
    expect(percentText(0.9998)).to.equal('99.98 %');
    expect(percentText(0.0002)).to.equal('0.02 %');
    expect(percentText(1)).to.equal('100.0 %');
    expect(percentText(0.9999999)).to.equal('above 99.99 %');
  });

  it('takes other words', async () => {
    const el = await shown();
    el.strings = { verdict: { held: 'gehalten', 'eaten-into': 'knapp', overrun: 'zu spät' } };
    await el.updateComplete;
    expect(text(find(el, '[role=option] .verdict'))).to.equal('gehalten');
  });

  it('says how far a calculation is', async () => {
    const el = await shown();
    el.busy = true;
    el.progress = { done: 2, total: 3 };
    await el.updateComplete;
    expect(text(find(el, '.busy'))).to.equal('Working out the handback, 2 of 3');
    expect(find(el, 'progress').getAttribute('value')).to.equal('2');
  });

  it('keeps within a phone 390 pixels wide', async () => {
    for (const el of [await shown('L3'), await shownLive()]) {
      el.style.setProperty('width', '390px');
      await new Promise(requestAnimationFrame);
      await new Promise(requestAnimationFrame);
      await el.updateComplete;
      expect(el.scrollWidth).to.be.at.most(390);
    }
  });

  it('has no accessibility faults empty, picked and during the shift, light and dark', async () => {
    await inBothSchemes(async () => {
      const empty = await fixture<PossessionHandback>(
        html`<possession-handback></possession-handback>`,
      );
      expect(text(empty.renderRoot.querySelector('.empty')!)).to.contain('Work out a plan first');
      expect(await axeFaults(empty)).to.deep.equal([]);
      for (const one of [await shown(''), await shown('E2'), await shownLive()]) {
        expect(await axeFaults(one)).to.deep.equal([]);
        one.remove();
      }
    });
  });
});

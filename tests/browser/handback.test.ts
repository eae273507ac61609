import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import type { PossessionHandback } from '../../components/handback/handback.js';
import { histogramOf } from '../../components/handback/end/histogram.js';
import { exactClock } from '../../components/handback/times.js';
import { percentText } from '../../components/shared/chance.js';
import type { WindowSelectEvent } from '../../components/ribbon/window-select-event.js';
import { MINUTE } from '../../src/calendar/index.js';
import { cautions } from '../../src/model/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { all, find, text } from './support/look.js';
import { at, press, zone } from './support/samples.js';
import { results, shown, shownLive } from './support/three-nights.js';

describe('possession-handback', () => {
  it('says each verdict in a word and a shape of its own', async () => {
    const el = await shown();
    const tags = all(el, '[role=option] .verdict');
    expect(tags.map(text)).to.deep.equal(['held, margin alone', 'eaten into', 'overrun']);
    const shapes = tags.map((tag) => tag.querySelector('svg')!.innerHTML);
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
    const told = text(all(el, '[role=option]')[1]);
    expect(told).to.contain(
      `${(100 * probability).toFixed(1)} % ±${(100 * standardError).toFixed(1)} standard error`,
    );
  });

  it('says that every run is on time where nothing can help, and names what helps where one is late', async () => {
    const helps = async (window: number) => {
      const el = await shown(results[window]!.window);
      return { told: text(find(el, '.helps')), rows: all(el, '.helps tbody tr').length };
    };
    const onTime = results.map(({ simulation }) => simulation.outlook.onTime.probability);
    expect(onTime[0]).to.equal(1);
    expect(onTime[1]).to.be.below(1);
    const [held, eaten] = [await helps(0), await helps(1)];
    expect(held).to.deep.equal({
      told: 'What helps most Every run is handed back on time.',
      rows: 0,
    });
    expect(eaten.rows).to.be.above(0);
    expect(eaten.told).not.to.contain('Every run');
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
    const bars = all(el, '.bars-table tbody tr').map((row) => ({
      runs: Number(row.children[1]!.textContent.replaceAll(/\D/g, '')),
      late: row.textContent.includes('late'),
    }));
    const { simulation } = results[2]!;
    const sum = (late: boolean): number =>
      bars.filter((bar) => bar.late === late).reduce((total, item) => total + item.runs, 0);
    expect(sum(false) + sum(true)).to.equal(simulation.runs);
    expect(sum(false) / simulation.runs).to.equal(simulation.outlook.onTime.probability);
    expect(el.renderRoot.querySelector('possession-chart')!.shown!.points).to.have.length(
      bars.length + 1,
    );
  });

  it('reads off its chart at the booked end the chance that the simulation tells', async () => {
    for (const result of results) {
      const el = await shown(result.window);
      const drawn = el.renderRoot.querySelector('possession-chart')!.shown!;
      const at = drawn.points.findIndex((point) => point === result.bookedEnd);
      const { probability } = result.simulation.outlook.onTime;
      // A picture that ends before the booked end has none but runs on time.
      expect(at < 0 ? 1 : drawn.series[2]!.values[at]).to.be.closeTo(probability, 1e-12);
      const sum = (of: number): number =>
        drawn.series[of]!.values.reduce((total: number, item) => total + (item ?? 0), 0);
      expect(sum(0)).to.be.closeTo(probability, 1e-9);
      expect(sum(0) + sum(1)).to.be.closeTo(1, 1e-9);
    }
  });

  it('puts a finish on the minute of the deadline on the side that is on time', () => {
    const { bars } = histogramOf(Float64Array.of(59.5, 60, 60.01, 70), 60, 20);
    const onTime = bars.filter((bar) => !bar.late).reduce((sum, bar) => sum + bar.runs, 0);
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
    const row = all(el, '.cut-offs tbody tr').find((element) =>
      text(element).includes('Inspect and test'),
    )!;
    // 05:00 less 30 min of lead-out, and less 45 min of margin.
    expect(text(row)).to.contain('03:45');
    expect(text(row)).to.contain('04:30');
    expect(text(row)).to.contain('to come');
  });

  it('gives the point of no return and the latest abandonment', async () => {
    const el = await shown();
    // 05:00 less 90 min of work, 30 of lead-out, 45 of margin; 05:00 less 45 of margin, 30 of lead-out, 60 to put it back.
    expect(text(find(el, 'article .decisions tbody tr'))).to.equal(
      'Cut out the old deck 02:15, explain 02:45, explain',
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
      for (const caution of cautions) expect(told.textContent).to.contain(caution);
      expect(told.getBoundingClientRect().height).to.be.greaterThan(0);
    }
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
    expect(percentText(0.9998)).to.equal('over 99.9 %');
    expect(percentText(0.0002)).to.equal('under 0.1 %');
    expect(percentText(0)).to.equal('under 0.1 %');
    expect(percentText(1)).to.equal('over 99.9 %');
    expect(percentText(0.9994)).to.equal('99.9 %');
  });

  it('takes other words', async () => {
    const el = await shown();
    el.strings = {
      heldByMargin: 'gehalten, nur die Reserve',
      verdict: { held: 'gehalten', 'chance-low': 'unsicher', eaten: 'knapp', overrun: 'zu spät' },
    };
    await el.updateComplete;
    expect(text(find(el, '[role=option] .verdict'))).to.equal('gehalten, nur die Reserve');
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
      expect(text(empty.renderRoot.querySelector('.empty'))).to.contain('Work out a plan first');
      expect(await axeFaults(empty)).to.deep.equal([]);
      for (const handback of [await shown(''), await shown('E2'), await shownLive()]) {
        expect(await axeFaults(handback)).to.deep.equal([]);
        handback.remove();
      }
    });
  });
});

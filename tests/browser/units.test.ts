import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../components/units/define.js';
import type { PossessionUnits } from '../../components/units/units.js';
import type { UnitsSelectEvent } from '../../components/units/units-select-event.js';
import { deadlineOf, repeatedOf, unitLine, visitsOf } from '../../components/units/visits.js';
import { MINUTE } from '../../src/calendar/index.js';
import type { Allocation } from '../../src/engine/index.js';
import type { PossessionChart } from '../../components/chart/chart.js';
import { pointWords } from '../../components/chart/shown.js';
import type { Activity } from '../../src/model/index.js';
import type { Figure } from '../../components/shared/figure-ask-event.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { activities as whole, allocation, at, windows, zone } from './support/samples.js';

const repeated = (id: string, done: number, units: number, more: Partial<Activity> = {}) => ({
  ...whole[1]!,
  id,
  title: `Sleepers ${id}`,
  work: {
    kind: 'units' as const,
    units,
    done,
    minutesPerUnit: 30,
    setUpMinutes: 20,
    makeSafeMinutes: 10,
  },
  ...more,
});
const activities: Activity[] = [whole[0]!, repeated('T10', 2, 12), repeated('T20', 0, 8)];
const work = repeatedOf(activities)[0]!;
const visit = (activity: string, window: string, from: string, to: string, units: number) => ({
  activity,
  window,
  from: at(from),
  to: at(to),
  units,
});
/** Out of time order, as an allocation may be. */
const plan: Allocation = {
  ...allocation,
  placements: [
    visit('T10', 'B3', '2027-05-02 00:00', '2027-05-02 02:30', 4),
    visit('T10', 'N1', '2027-02-10 00:00', '2027-02-10 03:30', 6),
    visit('T20', 'N1', '2027-02-10 03:30', '2027-02-10 05:00', 2),
  ],
};

const shown = (
  answer: Allocation | null = plan,
  works: readonly Activity[] = activities,
): Promise<PossessionUnits> =>
  fixture(
    html`<possession-units
      .allocation=${answer}
      .activities=${works}
      .windows=${windows}
      .zone=${zone}
    ></possession-units>`,
  );
const text = (el: Element | DocumentFragment): string =>
  el.textContent.replaceAll(/\s+/g, ' ').trim();
const find = (el: PossessionUnits, selector: string): string =>
  text(el.renderRoot.querySelector(selector)!);

describe('possession-units', () => {
  it('says why there is nothing to draw', async () => {
    expect(find(await shown(null), '.empty')).to.contain('No plan has been worked out');
    expect(find(await shown(plan, whole), '.empty')).to.contain('no repeated work');
  });

  it('counts on from the units done before the plan, in time order', () => {
    expect(
      visitsOf(work, plan).map((item) => [item.window, item.units, item.cumulative]),
    ).to.deep.equal([
      ['N1', 6, 8],
      ['B3', 4, 12],
    ]);
  });

  it('rises only inside a visit, between set-up and make-safe', () => {
    const line = unitLine(work.work, visitsOf(work, plan)).map((point) => [point.at, point.units]);
    expect(line.slice(0, 5)).to.deep.equal([
      [at('2027-02-10 00:00'), 2],
      [at('2027-02-10 00:20'), 2],
      [at('2027-02-10 03:20'), 8],
      [at('2027-02-10 03:30'), 8],
      [at('2027-05-02 00:00'), 8],
    ]);
  });

  it('shows the same sums in the table', async () => {
    const el = await shown();
    const rows = [...el.renderRoot.querySelectorAll('tbody tr')].map((row) =>
      [...row.children].map(text),
    );
    expect(rows).to.deep.equal([
      ['Before the plan', '2'],
      ['1', 'N1', 'Wed 10 Feb 2027, 00:00', 'Wed 10 Feb 2027, 03:30', '6', '8'],
      ['2', 'B3', 'Sun 2 May 2027, 00:00', 'Sun 2 May 2027, 02:30', '4', '12'],
    ]);
  });

  const chart = (el: PossessionUnits): PossessionChart =>
    el.renderRoot.querySelector<PossessionChart>('possession-chart')!;

  it('draws the line up to the target, which it meets when all is placed', async () => {
    const el = await shown();
    const { series, most } = chart(el).shown!;
    expect(series[0]!.values.at(-1)).to.equal(12);
    expect([series[1]!.values.at(-1), most]).to.deep.equal([12, 12]);
    el.selectedActivity = 'T20';
    await el.updateComplete;
    expect(chart(el).shown!.series[0]!.values.at(-1)).to.equal(2);
    expect(chart(el).shown!.most).to.equal(8);
    expect(find(el, '.told')).to.contain('6 units left over');
  });

  it('reads each moment with its window and its units, and shows the visits as bands', async () => {
    const el = await shown();
    const drawn = chart(el).shown!;
    const read = drawn.points.map((_, at) => pointWords(drawn, at));
    expect(read).to.include('Wed 10 Feb 03:20, N1: Units in place 8 units; all 12 units 12 units');
    expect(drawn.bands!.map((band) => band.text)).to.deep.equal(['N1', 'B3']);
    expect(drawn.points).to.deep.equal([...drawn.points].sort((a, b) => Number(a) - Number(b)));
  });

  it('shows the visits first, with the key date one look wider', async () => {
    const own = repeated('T10', 2, 12, { keyDate: at('2027-12-01 00:00') });
    const el = await shown(plan, [whole[0]!, own]);
    const { stretch, marks, points } = chart(el).shown!;
    expect(stretch![0]).to.be.below(at('2027-02-10 00:00'));
    expect(stretch![1]).to.be.within(at('2027-05-02 02:30'), at('2027-06-01 00:00'));
    expect(marks![0]!.at).to.equal(at('2027-12-01 00:00'));
    expect(points.at(-1)).to.be.at.least(marks![0]!.at);
  });

  it('takes the float from the key date of the package and says when it is late', async () => {
    const el = await shown();
    expect(find(el, '.deadline')).to.contain('Key date of the package the end of Fri 19 Mar 2027');
    expect(find(el, '.deadline')).to.contain('late by 7 d 15 h');
    expect(chart(el).shown!.marks![0]!.text).to.equal('key date, late by 7 d 15 h');
  });

  it('prefers a key date of the activity, with a float only when all is placed', () => {
    const keyDate = at('2027-05-02 03:30');
    const own = repeatedOf([repeated('T10', 2, 12, { keyDate })])[0]!;
    expect(deadlineOf(own, visitsOf(own, plan), plan)).to.deep.equal({
      due: keyDate,
      of: 'activity',
      floatMinutes: 60,
    });
    const more = repeatedOf([repeated('T10', 2, 13, { keyDate })])[0]!;
    expect(deadlineOf(more, visitsOf(more, plan), plan)?.floatMinutes).to.equal(null);
  });

  it('draws no mark without a key date', async () => {
    const el = await shown({ ...plan, keyDates: [] });
    expect(chart(el).shown!.marks).to.equal(undefined);
    expect(find(el, '.deadline')).to.equal('No key date.');
  });

  it('tells which repeated work is picked', async () => {
    const el = await shown();
    const buttons = [...el.renderRoot.querySelectorAll<HTMLElement>('.works button')];
    expect(buttons.map(text)).to.deep.equal([
      'T10 Sleepers T10 12 of 12',
      'T20 Sleepers T20 2 of 8',
    ]);
    setTimeout(() => buttons[1]!.click());
    const event = await oneEvent<UnitsSelectEvent>(el, 'possession-units-select');
    expect(event.activity).to.equal('T20');
    expect(event.bubbles && event.composed).to.equal(true);
    await el.updateComplete;
    expect(buttons.map((button) => button.getAttribute('aria-pressed'))).to.deep.equal([
      'false',
      'true',
    ]);
    expect(find(el, 'h3')).to.contain('T20');
  });

  it('says nothing when the work shown is picked again', async () => {
    const el = await shown();
    let heard = 0;
    el.addEventListener('possession-units-select', () => heard++);
    el.renderRoot.querySelector<HTMLElement>('.works button')!.click();
    expect(heard).to.equal(0);
  });

  it('copes with work that has no visit, and with a visit too short for set-up', async () => {
    const el = await shown({ ...plan, placements: [] });
    expect(find(el, '.told')).to.contain('no visit').and.to.contain('10 units left over');
    const from = at('2027-02-10 00:00');
    const short = visitsOf(work, {
      ...plan,
      placements: [{ activity: 'T10', window: 'N1', from, to: from + 25 * MINUTE, units: 1 }],
    });
    const moments = unitLine(work.work, short).map((point) => point.at - from);
    expect(moments).to.deep.equal([0, 0, 25 * MINUTE, 25 * MINUTE]);
  });

  it('does not widen a page of 390 px', async () => {
    const el = await shown();
    el.style.setProperty('width', '390px');
    await el.updateComplete;
    expect(el.scrollWidth).to.be.at.most(390);
  });

  it('asks where the units and the float come from', async () => {
    const el = await shown();
    const asked: Figure[] = [];
    el.addEventListener('possession-figure-ask', (event) => asked.push(event.figure));
    for (const element of el.renderRoot.querySelectorAll<HTMLElement>('[data-ask]'))
      element.click();
    expect(asked).to.deep.equal([
      { of: 'units-placed', activity: 'T10' },
      { of: 'key-date', package: 'Track' },
    ]);
  });

  it('has its visits one key away, and under the picture on paper', async () => {
    const el = await shown();
    const visible = (): boolean => el.renderRoot.querySelector('table')!.checkVisibility();
    expect(visible()).to.equal(false);
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(visible()).to.equal(true);
    globalThis.dispatchEvent(new Event('afterprint'));
    expect(visible()).to.equal(false);
    chart(el).renderRoot.querySelector<HTMLElement>('.frame')!.focus();
    await sendKeys({ press: 't' });
    await chart(el).updateComplete;
    expect(visible()).to.equal(true);
    expect((el.renderRoot as ShadowRoot).activeElement).to.equal(
      el.renderRoot.querySelector('[slot=table]'),
    );
  });

  it('has no accessibility faults, empty and full', async () => {
    const open = await shown();
    chart(open).renderRoot.querySelector<HTMLElement>('.under > .plain')!.click();
    await chart(open).updateComplete;
    for (const el of [await shown(null), await shown(plan, whole), open])
      await inBothSchemes(async () => {
        expect(await axeFaults(el)).to.deep.equal([]);
      });
  });
});

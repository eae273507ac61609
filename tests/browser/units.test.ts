import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/units/define.js';
import { unitTicks } from '../../components/units/picture.js';
import type { PossessionUnits } from '../../components/units/units.js';
import type { UnitsSelectEvent } from '../../components/units/units-select-event.js';
import { deadlineOf, repeatedOf, unitLine, visitsOf } from '../../components/units/visits.js';
import { MINUTE } from '../../src/calendar/index.js';
import type { Allocation } from '../../src/engine/index.js';
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
  el.textContent!.replaceAll(/\s+/g, ' ').trim();
const find = (el: PossessionUnits, selector: string): string =>
  text(el.renderRoot.querySelector(selector)!);

describe('possession-units', () => {
  it('says why there is nothing to draw', async () => {
    expect(find(await shown(null), '.empty')).to.contain('No plan has been worked out');
    expect(find(await shown(plan, whole), '.empty')).to.contain('no repeated work');
  });

  it('counts on from the units done before the plan, in time order', () => {
    expect(
      visitsOf(work, plan).map((one) => [one.window, one.units, one.cumulative]),
    ).to.deep.equal([
      ['N1', 6, 8],
      ['B3', 4, 12],
    ]);
  });

  it('rises only inside a visit, between set-up and make-safe', () => {
    const line = unitLine(work.work, visitsOf(work, plan)).map((one) => [one.at, one.units]);
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

  it('draws the line up to the target, which it meets when all is placed', async () => {
    const el = await shown();
    const target = el.renderRoot.querySelector('.target')!.getAttribute('y1');
    const last = [...el.renderRoot.querySelectorAll('.dot')].at(-1)!;
    expect(last.getAttribute('cy')).to.equal(target);
    el.selectedActivity = 'T20';
    await el.updateComplete;
    const short = [...el.renderRoot.querySelectorAll('.dot')].at(-1)!;
    expect(Number(short.getAttribute('cy'))).to.be.greaterThan(Number(target));
    expect(find(el, '.told')).to.contain('6 units left over');
  });

  it('takes the float from the key date of the package and says when it is late', async () => {
    const el = await shown();
    expect(find(el, '.deadline')).to.contain('Key date of the package the end of Fri 19 Mar 2027');
    expect(find(el, '.deadline')).to.contain('late by 7 d 15 h');
    expect(find(el, '.due-text')).to.contain('late by 7 d 15 h');
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
    expect(el.renderRoot.querySelector('.due')).to.equal(null);
    expect(find(el, '.deadline')).to.equal('No key date.');
  });

  it('tells which repeated work is picked', async () => {
    const el = await shown();
    const buttons = [...el.renderRoot.querySelectorAll<HTMLElement>('.choice button')];
    expect(buttons.map(text)).to.deep.equal([
      'T10 Sleepers T10 12 of 12',
      'T20 Sleepers T20 2 of 8',
    ]);
    setTimeout(() => buttons[1]!.click());
    const event = await oneEvent<UnitsSelectEvent>(el, 'possession-units-select');
    expect(event.activity).to.equal('T20');
    expect(event.bubbles && event.composed).to.equal(true);
    await el.updateComplete;
    expect(buttons.map((one) => one.getAttribute('aria-pressed'))).to.deep.equal(['false', 'true']);
    expect(find(el, 'h3')).to.contain('T20');
  });

  it('says nothing when the work shown is picked again', async () => {
    const el = await shown();
    let heard = 0;
    el.addEventListener('possession-units-select', () => heard++);
    el.renderRoot.querySelector<HTMLElement>('.choice button')!.click();
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
    const moments = unitLine(work.work, short).map((one) => one.at - from);
    expect(moments).to.deep.equal([0, 0, 25 * MINUTE, 25 * MINUTE]);
  });

  it('marks whole, even numbers of units', () => {
    expect(unitTicks(12)).to.deep.equal([0, 5, 10]);
    expect(unitTicks(3)).to.deep.equal([0, 1, 2, 3]);
    expect(unitTicks(900)).to.deep.equal([0, 200, 400, 600, 800]);
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
    for (const one of el.renderRoot.querySelectorAll<HTMLElement>('[data-ask]')) one.click();
    expect(asked).to.deep.equal([
      { of: 'units-placed', activity: 'T10' },
      { of: 'key-date', package: 'Track' },
    ]);
  });

  it('is drawn as wide as a sheet of paper while it is printed, with its table open', async () => {
    const el = await shown();
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(el.renderRoot.querySelector('.frame svg')!.getAttribute('width')).to.equal('694');
    expect(el.renderRoot.querySelector('details')!.open).to.equal(true);
    globalThis.dispatchEvent(new Event('afterprint'));
    expect(el.renderRoot.querySelector('details')!.open).to.equal(false);
  });

  it('has no accessibility faults, empty and full', async () => {
    const open = await shown();
    open.renderRoot.querySelector('details')!.open = true;
    for (const el of [await shown(null), await shown(plan, whole), open])
      await inBothSchemes(async () => {
        expect(await axeFaults(el)).to.deep.equal([]);
      });
  });
});

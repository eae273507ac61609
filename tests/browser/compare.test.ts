import { expect, fixture, html } from '@open-wc/testing';
import { changesOf } from '../../components/compare/changes.js';
import type { PossessionCompare } from '../../components/compare/compare.js';
import '../../components/compare/define.js';
import { MINUTE } from '../../src/calendar/index.js';
import type { Allocation, Placement } from '../../src/engine/index.js';
import type { Figure } from '../../components/shared/figure-ask-event.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { activities, allocation, at, night, windows, zone } from './support/samples.js';

const visit = (activity: string, window: string, from: string, to: string, units?: number) => {
  const made: Placement = { activity, window, from: at(from), to: at(to) };
  return units === undefined ? made : { ...made, units };
};
const stays = visit('D10', 'N1', '2027-02-10 00:00', '2027-02-10 02:00');

const before: Allocation = {
  ...allocation,
  placements: [
    stays,
    visit('T10', 'N1', '2027-02-10 02:00', '2027-02-10 04:00', 3),
    visit('T10', 'S2', '2027-03-28 00:00', '2027-03-28 04:00', 4),
    visit('W10', 'S2', '2027-03-28 04:00', '2027-03-28 06:00'),
  ],
  unplaced: [],
  finishesAt: at('2027-03-28 06:00'),
  windowsUsed: 2,
};
const after: Allocation = {
  ...allocation,
  placements: [
    stays,
    visit('T10', 'B3', '2027-05-02 00:00', '2027-05-02 04:00', 5),
    visit('T10', 'S2', '2027-03-28 00:30', '2027-03-28 04:30', 4),
    visit('X10', 'B3', '2027-05-02 04:00', '2027-05-02 05:00'),
  ],
  finishesAt: at('2027-05-02 05:00'),
  windowsUsed: 3,
  keyDates: [
    { ...allocation.keyDates[0]!, floatMinutes: 27_000 - 1500 },
    { ...allocation.keyDates[1]!, floatMinutes: 60, met: true },
    { ...allocation.keyDates[2]!, forecast: at('2027-03-28 06:00'), floatMinutes: 5, met: true },
  ],
  certificate: { ...allocation.certificate, proven: true, text: 'proven best' },
};

const shown = (
  old: Allocation | null = before,
  now: Allocation | null = after,
): Promise<PossessionCompare> =>
  fixture(
    html`<possession-compare
      .beforePlan=${old}
      .afterPlan=${now}
      .beforeName=${'Plan A'}
      .afterName=${'Plan B'}
      .windows=${windows}
      .activities=${activities}
      .zone=${zone}
    ></possession-compare>`,
  );
const text = (el: Element | DocumentFragment): string =>
  el.textContent.replaceAll(/\s+/g, ' ').trim();
const texts = (el: PossessionCompare, selector: string): string[] =>
  [...el.renderRoot.querySelectorAll(selector)].map(text);

describe('possession-compare', () => {
  it('says how to keep a plan when there is none to compare with', async () => {
    expect(text((await shown(null, null)).renderRoot.querySelector('.empty')!)).to.contain(
      'Work out a plan and keep it',
    );
    expect(text((await shown(null, after)).renderRoot.querySelector('.empty')!)).to.contain(
      'Keep the plan you have now',
    );
    expect(text((await shown(before, null)).renderRoot.querySelector('.empty')!)).to.contain(
      'no later plan',
    );
  });

  it('sets the figures of both plans side by side with the change in sign and words', async () => {
    const rows = texts(await shown(), '.summary tbody tr');
    expect(rows[0]).to.contain('Sun 28 Mar 2027, 06:00').and.to.contain('Sun 2 May 2027, 05:00');
    expect(rows[0]).to.contain('+34 d 23 h later');
    expect(rows[1]).to.match(/2\s?3\s?\+1 more/);
    expect(rows[2]).to.contain('1 of 3').and.to.contain('3 of 3').and.to.contain('+2 more');
    expect(rows[3]).to.match(/0\s?1\s?\+1 more/);
    expect(rows[4]).to.contain('best found').and.to.contain('proven best');
  });

  it('calls fewer windows better and more windows worse', async () => {
    const sense = (el: PossessionCompare) =>
      el.renderRoot.querySelectorAll('.summary .mark')[1]!.className;
    expect(sense(await shown())).to.contain('worse');
    expect(sense(await shown(after, before))).to.contain('better');
  });

  it('tells every key date with its forecast and float in both plans and the change', async () => {
    const el = await shown();
    const rows = texts(el, '.dates tbody tr');
    expect(rows[0]).to.contain('18 d 18 h').and.to.contain('−1 d 1 h less float');
    expect(rows[1]).to.contain('float −7 d 15 h, missed').and.to.contain('+7 d 16 h more float');
    expect(rows[2]).to.contain('not all placed').and.to.contain('all placed now');
    const marks = [...el.renderRoot.querySelectorAll('.dates .mark')];
    expect(marks.map((mark) => mark.classList[1])).to.deep.equal(['worse', 'better', 'better']);
    expect(marks.every((mark) => mark.querySelector('svg path'))).to.equal(true);
  });

  it('finds exactly the work that moved', () => {
    const { work, unchanged } = changesOf(before, after);
    expect(unchanged).to.equal(1);
    expect(
      work.map((change) => [
        change.kind,
        change.activity,
        change.before?.window,
        change.after?.window,
      ]),
    ).to.deep.equal([
      ['moved', 'T10', 'N1', 'B3'],
      ['retimed', 'T10', 'S2', 'S2'],
      ['dropped', 'W10', 'S2', undefined],
      ['placed', 'X10', undefined, 'B3'],
    ]);
  });

  it('calls a visit that an activity has more or less just that', () => {
    const placement = visit('T10', 'N1', '2027-02-10 02:00', '2027-02-10 04:00', 3);
    const two = visit('T10', 'S2', '2027-03-28 00:00', '2027-03-28 04:00', 4);
    const few = { ...before, placements: [placement] };
    const many = { ...before, placements: [placement, two] };
    expect(changesOf(few, many).work).to.deep.equal([
      { kind: 'visit-more', activity: 'T10', before: null, after: two },
    ]);
    expect(changesOf(many, few).work).to.deep.equal([
      { kind: 'visit-less', activity: 'T10', before: two, after: null },
    ]);
  });

  it('lists moved work with both windows, their times and the units', async () => {
    const el = await shown();
    const rows = texts(el, '.moves li');
    expect(rows).to.have.length(4);
    expect(rows[0]).to.contain('T10 Track work moved to another window');
    expect(rows[0]).to.contain('Plan AN1 Wed 10 Feb 02:00 to 04:00');
    expect(rows[0]).to.contain('Plan BB3 Sun 2 May 00:00 to 04:00');
    expect(rows[0]).to.contain('3, then 5');
    expect(rows[1]).to.contain('Units4');
    expect(rows[2]).to.contain('no longer placed');
    expect(rows[3]).to.contain('newly placed');
    expect(text(el.renderRoot.querySelector('.unchanged')!)).to.equal('1 piece of work unchanged.');
  });

  it('says that nothing moved when nothing did', async () => {
    const el = await shown(before, { ...before, placements: [...before.placements].reverse() });
    expect(text(el.renderRoot.querySelector('.nothing')!)).to.contain('Nothing moved');
    expect(el.renderRoot.querySelector('.moves')).to.equal(null);
    expect(text(el.renderRoot.querySelector('.unchanged')!)).to.contain('4 pieces of work');
    expect(texts(el, '.mark').every((item) => item === 'same')).to.equal(true);
  });

  it('warns of a plan that failed its check', async () => {
    const bad = { ...after, certificate: { ...after.certificate, verified: false } };
    const el = await shown(before, bad);
    expect(texts(el, '[role=alert]')).to.have.length(1);
  });

  it('tells outside work by its times alone', async () => {
    const outside = { activity: 'D10', window: null, from: night.start, to: night.end };
    const later = { ...outside, from: night.start + MINUTE, to: night.end + MINUTE };
    const el = await shown(
      { ...before, placements: [outside] },
      { ...before, placements: [later] },
    );
    expect(texts(el, '.moves li')[0]).to.contain('outside, needs no window Tue 9 Feb 23:31');
  });

  it('does not widen a page of 390 px', async () => {
    const el = await shown();
    el.style.setProperty('width', '390px');
    await el.updateComplete;
    expect(el.scrollWidth).to.be.at.most(390);
    const summary = el.renderRoot.querySelector('.scroll')!;
    expect(summary.scrollWidth).to.be.at.most(summary.clientWidth);
  });

  it('asks where each figure and each key date comes from', async () => {
    const el = await shown();
    const asked: Figure[] = [];
    el.addEventListener('possession-figure-ask', (event) => asked.push(event.figure));
    for (const element of el.renderRoot.querySelectorAll<HTMLElement>('th button')) element.click();
    expect(asked.map((figure) => ('figure' in figure ? figure.figure : figure.of))).to.deep.equal([
      'finish',
      'windows-used',
      'dates-met',
      'left-over',
      'quality',
      'compare-key-date',
      'compare-key-date',
      'compare-key-date',
    ]);
  });

  it('has no accessibility faults without plans, with equal plans and with changes', async () => {
    for (const el of [await shown(null, null), await shown(before, before), await shown()])
      await inBothSchemes(async () => {
        expect(await axeFaults(el)).to.deep.equal([]);
      });
  });
});

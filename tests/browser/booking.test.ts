import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../components/booking/define.js';
import type { PossessionBooking } from '../../components/booking/booking.js';
import type { CalendarSaveEvent } from '../../components/booking/calendar-save-event.js';
import type { ShareChangeEvent } from '../../components/booking/share-change-event.js';
import { strings as german } from '../../components/booking/strings.de.js';
import { comingWeeks, stripMarks } from '../../components/booking/coming-weeks.js';
import { localTimeOf, minutesBetween } from '../../src/calendar/index.js';
import type { BookAnswer, Milestone } from '../../src/engine/index.js';
import { cautions } from '../../src/model/index.js';
import { exampleBooking, milestonesFor } from '../../src/rules/booking/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';
import { at, aWindow, zone } from './support/samples.js';

const now = at('2027-01-04 09:00');
const windows = [
  aWindow('A1', '2027-03-27 22:50', '2027-03-28 06:00', { status: 'requested' }),
  aWindow('B2', '2027-07-10 23:30', '2027-07-12 05:30', { status: 'requested' }),
  aWindow('C3', '2027-02-20 23:00', '2027-02-21 06:00', { status: 'withdrawn' }),
  aWindow('D4', '2027-05-08 23:00', '2027-05-09 07:00'),
];
const [early, far, withdrawn, added] = windows as [
  (typeof windows)[0],
  (typeof windows)[0],
  (typeof windows)[0],
  (typeof windows)[0],
];
const milestones = [
  ...milestonesFor(early, exampleBooking, now),
  ...milestonesFor(far, exampleBooking, now),
  ...milestonesFor(withdrawn, exampleBooking, now),
  ...milestonesFor(added, exampleBooking, now, {
    addedAt: at('2027-01-03 12:00'),
    met: new Map([['Operators bid amended trains', at('2027-01-03 23:59')]]),
  }),
];
const answer: BookAnswer = {
  rules: exampleBooking.name,
  weeksFrom: 'window',
  weekStarts: 'sat',
  milestones,
  windows: windows.map((window, at) => ({
    window: window.id,
    days: 2,
    sharePercent: at === 0 ? 35 : null,
    restriction: at === 0 ? 'less than minor' : null,
    periods: at === 0 ? ['P13 2026/27', 'P1 2027/28'] : ['P1 2027/28'],
  })),
  calendar: { name: 'Plan', stamp: now, about: 'Document: Plan.' },
};

const shown = (given: BookAnswer | null = answer): Promise<PossessionBooking> =>
  fixture(
    html`<possession-booking
      .answer=${given}
      .windows=${windows}
      .now=${now}
    ></possession-booking>`,
  );
const texts = (el: PossessionBooking, css: string): string[] =>
  [...el.renderRoot.querySelectorAll(css)].map((element) => element.textContent.trim());
const pick = async (el: PossessionBooking, filter: string): Promise<void> => {
  el.renderRoot.querySelector<HTMLElement>(`[data-filter=${filter}]`)!.click();
  await el.updateComplete;
};
const count = (test: (milestone: Milestone) => boolean): number => milestones.filter(test).length;

describe('possession-booking', () => {
  it('lists every milestone of every window by its date, with its state as a word and a shape', async () => {
    const el = await shown();
    await pick(el, 'all');
    const byDate = [...milestones].sort((a, b) => a.due - b.due);
    expect(texts(el, '.due-list .state')).to.deep.equal(byDate.map((milestone) => milestone.state));
    expect(texts(el, '.due-list .window-cell strong')).to.deep.equal(
      byDate.map((milestone) => milestone.window),
    );
    expect(el.renderRoot.querySelectorAll('.due-list .state svg :is(.shape)').length).to.equal(
      milestones.length,
    );
    expect(new Set(milestones.map((milestone) => milestone.state)).size).to.equal(5);
  });

  it('gives each state a shape of its own', async () => {
    const el = await shown();
    const shapes = [...el.renderRoot.querySelectorAll('.summary svg')].map((element) =>
      [...element.children].map((child) => child.outerHTML.replace(/class="[^"]*"/g, '')).join(),
    );
    expect(new Set(shapes).size).to.equal(5);
  });

  it('counts the milestones of each state', async () => {
    const el = await shown();
    const counts = [...el.renderRoot.querySelectorAll('.summary li')].map((element) => [
      element.querySelector('.state')!.textContent.trim(),
      Number(element.querySelector('strong')!.textContent),
    ]);
    expect(counts.length).to.equal(5);
    for (const [state, number] of counts)
      expect(number).to.equal(count((milestone) => milestone.state === state));
  });

  it('writes due times in the zone of the window', async () => {
    const el = await shown();
    const row = [...el.renderRoot.querySelectorAll('.due-list tbody tr')].find(
      (element) =>
        element.textContent.includes('In the working timetable') &&
        element.textContent.includes('A1'),
    )!;
    expect(text(row.querySelector('time'))).to.equal('Sat 2 Jan 2027 22:00');
    expect(row.querySelector('.left')!.textContent.trim()).to.equal('1 d 11 h ago');
  });

  it('shows what is open at first, only what is late, what is due within four weeks, or all', async () => {
    const el = await shown();
    expect(texts(el, '.due-list .state').length).to.equal(
      count((milestone) => milestone.state !== 'met' && milestone.state !== 'not needed'),
    );
    await pick(el, 'late');
    const late = texts(el, '.due-list .state');
    expect(late.length).to.equal(count((milestone) => milestone.state === 'late'));
    expect(new Set(late)).to.deep.equal(new Set(['late']));
    await pick(el, 'soon');
    const soon = count(
      (milestone) =>
        milestone.state === 'due' && minutesBetween(now, milestone.due) <= 28 * 24 * 60,
    );
    expect(soon).to.be.greaterThan(0);
    expect(texts(el, '.due-list .state').length).to.equal(soon);
    expect(texts(el, '[aria-pressed=true]')[0]).to.match(/^Next 4 weeks/);
    await pick(el, 'all');
    expect(texts(el, '.due-list .state').length).to.equal(milestones.length);
  });

  it('shows the dates of one of those who have something to do', async () => {
    const el = await shown();
    await pick(el, 'all');
    const chosen = el.renderRoot.querySelector<HTMLSelectElement>('.asked select')!;
    expect([...chosen.options].map((option) => option.value)).to.include.members(['', 'operators']);
    chosen.value = 'operators';
    chosen.dispatchEvent(new Event('change'));
    await el.updateComplete;
    expect(texts(el, '.due-list .state').length).to.equal(
      count((milestone) => milestone.by === 'operators'),
    );
    expect(new Set(texts(el, '.due-list .by'))).to.deep.equal(new Set(['by operators']));
  });

  it('shows days, periods and class of a window, and hands a share of trains to the page', async () => {
    const el = await shown();
    const [first] = texts(el, '.class tbody tr');
    expect(first).to.contain('P13 2026/27, P1 2027/28');
    expect(first).to.contain('lies in two periods');
    expect(first).to.contain('less than minor');
    const input = el.renderRoot.querySelector<HTMLInputElement>('.class input')!;
    setTimeout(() => {
      input.value = '55';
      input.dispatchEvent(new Event('change', { bubbles: true }));
    });
    const event = await oneEvent<ShareChangeEvent>(el, 'possession-share-change');
    expect([event.window, event.sharePercent]).to.deep.equal(['A1', 55]);
  });

  it('says in the language of the page that a window lies in two periods', async () => {
    // The period ends at the midnight between; see tests/published/booking.test.ts.
    const over = aWindow('P8', '2026-11-14 22:00', '2026-11-15 06:00', { status: 'requested' });
    const itsDates = milestonesFor(over, exampleBooking, now);
    const el = await shown({ ...answer, milestones: itsDates });
    await pick(el, 'all');
    const notes = (): string[] => texts(el, '.due-list .note');
    const inTwo = itsDates.filter((milestone) => milestone.inTwo).length;
    expect(inTwo).to.be.greaterThan(0);
    expect(notes()).to.have.length(inTwo);
    expect(notes()[0]).to.equal(
      'The window lies in two of them: counted from the first four-week period.',
    );
    el.lang = 'de';
    await waitUntil(() => notes()[0]?.includes('Vier-Wochen-Perioden: Gezählt wird'));
    expect(notes()).to.have.length(inTwo);
  });

  it('says so when nothing is like that', async () => {
    const el = await shown({
      ...answer,
      milestones: milestonesFor(withdrawn, exampleBooking, now),
    });
    await pick(el, 'late');
    expect(texts(el, '.none-shown')).to.deep.equal(['No milestone is like that.']);
  });

  it('hands a calendar file to the page, in its language', async () => {
    const el = await shown();
    const save = async (): Promise<CalendarSaveEvent> => {
      setTimeout(() => el.renderRoot.querySelector<HTMLElement>('.save')!.click());
      return oneEvent<CalendarSaveEvent>(el, 'possession-calendar-save');
    };
    const event = await save();
    const unfolded = (text: string): string => text.replaceAll('\r\n ', '');
    expect(unfolded(event.text)).to.contain('State when written: due.');
    expect(event.bubbles && event.composed).to.equal(true);
    el.lang = 'de';
    await waitUntil(() => texts(el, '.save')[0] === german.save);
    const told = unfolded((await save()).text);
    expect(told).to.contain('Stand beim Schreiben: fällig.');
    expect(texts(el, '.class tbody th')[0]).to.contain('beantragt');
    for (const caution of cautions) expect(told).not.to.contain(caution);
  });

  it('says by how much something was met late', async () => {
    const late = { ...milestones[0]!, state: 'met' as const, metLateByMinutes: 1500 };
    const el = await shown({ ...answer, milestones: [late] });
    await pick(el, 'all');
    expect(texts(el, '.due-list .left')).to.deep.equal(['met 1 d 1 h late']);
  });

  it('puts what is due on the strip, in order of time and none upon another', async () => {
    const el = await shown();
    const stretch = comingWeeks(now, zone);
    const due = count((milestone) => milestone.state === 'due' && milestone.due < stretch.to);
    const marks = [...el.renderRoot.querySelectorAll('.strip .due-mark')];
    expect(due).to.be.greaterThan(0);
    expect(marks.length).to.equal(due);
    expect(new Set(marks.map((mark) => mark.getAttribute('transform'))).size).to.equal(due);
  });

  it('stands on the moment of the answer when no other is given', async () => {
    const el = await shown();
    const told = texts(el, '.name p')[0];
    el.now = null;
    await el.updateComplete;
    expect(texts(el, '.name p')[0]).to.equal(told);
    expect(told).to.contain('Mon 4 Jan 2027, 09:00');
  });

  it('works by keyboard', async () => {
    const el = await shown();
    const soon = el.renderRoot.querySelector<HTMLElement>('[data-filter=soon]')!;
    soon.focus();
    expect((el.renderRoot as ShadowRoot).activeElement).to.equal(soon);
    await sendKeys({ press: 'Space' });
    expect(el.filter).to.equal('soon');
    await sendKeys({ press: 'Tab' });
    await sendKeys({ press: 'Enter' });
    expect(el.filter).to.equal('all');
    // The choice of who, the table that scrolls, and a field for each window.
    const fields = el.renderRoot.querySelectorAll('.class input').length + 2;
    for (let i = 0; i <= fields; i += 1) await sendKeys({ press: 'Tab' });
    await sendKeys({ press: 'Enter' });
    expect(el.renderRoot.querySelector('details')!.open).to.equal(true);
    expect(
      [...el.renderRoot.querySelectorAll<HTMLElement>('button')].every(
        (element) => element.tabIndex === 0,
      ),
    ).to.equal(true);
  });

  it('names the source of every lead time once, with its sureness', async () => {
    const el = await shown();
    const names = new Set(milestones.map((milestone) => milestone.milestone));
    expect(texts(el, '.sources dt')).to.have.members([...names]);
    for (const milestone of milestones)
      expect(texts(el, '.sources dd').join()).to.contain(
        `${milestone.source} (${milestone.sureness})`,
      );
  });

  it('shows every caution', async () => {
    const el = await shown();
    expect(texts(el, '.cautions li')).to.deep.equal(cautions);
  });

  it('does not overflow 390 px', async () => {
    const el = await shown();
    el.style.setProperty('width', '390px');
    await waitUntil(() => el.scrollWidth <= 390, 'room within 390 px');
    const edge = el.getBoundingClientRect().right + 0.5;
    for (const element of el.renderRoot.querySelectorAll('svg, table, td, th[scope=row], button'))
      expect(element.getBoundingClientRect().right).to.be.at.most(edge);
  });

  it('has no accessibility faults empty, filtered and full, light and dark', async () => {
    const el = await shown(null);
    await inBothSchemes(async () => {
      for (const given of [null, answer])
        for (const filter of ['open', 'all', 'late', 'soon'] as const) {
          el.answer = given;
          el.filter = filter;
          await el.updateComplete;
          for (const element of el.renderRoot.querySelectorAll('details')) element.open = true;
          expect(await axeFaults(el)).to.deep.equal([]);
        }
    });
  });
});

describe('the coming weeks', () => {
  it('starts each week at local midnight, across the change of clocks', () => {
    const { weeks } = comingWeeks(at('2027-03-10 09:00'), zone);
    expect(weeks.length).to.equal(11);
    for (const week of weeks) expect(localTimeOf(week, zone).hour).to.equal(0);
  });

  it('gives milestones at one moment rows of their own', () => {
    const one = { ...milestones[0]!, state: 'due' as const, due: now + 864e5 };
    const marks = stripMarks([one, one, one], comingWeeks(now, zone), (t) => (t - now) / 1e7, 15);
    expect(marks.map((mark) => mark.row)).to.deep.equal([0, 1, 2]);
  });
});

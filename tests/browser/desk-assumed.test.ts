import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button, inside } from './support/desk-look.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'Two nights',
  {
    windows: tableOf(
      'windows.csv',
      `window,start,end,status
W2,2027-03-09 23:00,2027-03-10 05:00,
W1,2027-03-02 23:00,2027-03-03 05:00,`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,after,minutes
Deck,D1,Cut out,,200
Deck,D2,Lift in,D1,200`,
    ),
  },
  { rules: stepRules() },
);

async function shown(): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${createInlineEngine()} .document=${plan}></possession-desk>`,
  );
  await el.updateComplete;
  await waitUntil(() => el.planning.allocation, 'a plan');
  await el.updateComplete;
  return el;
}
const band = (el: PossessionDesk): string => text(el.renderRoot.querySelector('.assumed'));

describe('what the answer rests on', () => {
  it('stands over the answer: what is unsaid between windows, before a word of proof', async () => {
    const el = await shown();
    expect(band(el)).to.contain('Not said, for 1 pair of work in different windows');
    expect(text(el.renderRoot.querySelector('.proof'))).to.match(/^Of the search alone/);
  });

  it('is said for a pair by one press, in the cells, and taken back by undo', async () => {
    const el = await shown();
    button(el.renderRoot.querySelector('.assumed')!, 'The line is fit to run after D1')!.click();
    const { columns, rows } = el.document!.tables.work;
    expect(columns.at(-1)).to.equal('made good by');
    expect(rows.map((row) => row[columns.length - 1] ?? '')).to.deep.equal(['none', '']);
    await waitUntil(() => el.planning.allocation?.unstated.length === 0, 'planned again');
    el.undo();
    expect(el.document).to.deep.equal(plan);
  });

  it('keeps apart what nobody said and what somebody wrote', async () => {
    const el = await shown();
    const titles = (): string[] =>
      [...el.renderRoot.querySelectorAll('.granted summary')].map((element) => text(element));
    expect(titles().join()).to.match(/^Taken for granted: \d things that nobody said$/);
    const windows = el.document!.tables.windows;
    const rows = windows.rows.map((row, at) =>
      at === 0 ? [...row.slice(0, 3), 'requested'] : row,
    );
    el.document = { ...plan, tables: { ...plan.tables, windows: { ...windows, rows } } };
    await waitUntil(() => titles().length === 2, 'another group');
    expect(titles()[1]).to.equal('To check: 1 thing that the tables say');
    expect(text([...el.renderRoot.querySelectorAll('.granted')][1])).to.contain(
      '1 of 2 windows is only requested',
    );
  });

  it('folds to its sentence and its proof on a phone, until a person opens it', async () => {
    const el = await shown();
    el.style.display = 'block';
    el.style.width = '390px';
    await el.updateComplete;
    const seen = (name: string): boolean =>
      el.renderRoot.querySelector<HTMLElement>(name)!.checkVisibility();
    expect([seen('.answer .sentence'), seen('.answer .proof')]).to.deep.equal([true, true]);
    expect([seen('.answer .search'), seen('.answer .rests')]).to.deep.equal([false, false]);
    el.renderRoot.querySelector<HTMLElement>('.unfold')!.click();
    await el.updateComplete;
    expect([seen('.answer .search'), seen('.answer .rests')]).to.deep.equal([true, true]);
    el.style.width = '1200px';
    el.folded = true;
    await el.updateComplete;
    expect([seen('.unfold'), seen('.answer .search')]).to.deep.equal([false, true]);
  });

  it('counts what was taken for granted, and leads to the cells', async () => {
    const el = await shown();
    const granted = el.renderRoot.querySelector('.answer .granted');
    expect(text(granted)).to.match(/2 of 2 windows? have no status/);
    const line = [...el.renderRoot.querySelectorAll('.granted li')].find((element) =>
      text(element).includes('no status'),
    )!;
    button(line, 'Show the')!.click();
    await waitUntil(() => el.view === 'work' && el.workTable === 'windows', 'the table');
  });

  it('breaks no rule of accessibility when it is open, light and dark', async () => {
    const el = await shown();
    for (const element of el.renderRoot.querySelectorAll('details')) element.open = true;
    await inBothSchemes(async (scheme) => {
      el.theme = scheme;
      await el.updateComplete;
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

describe('a table that is refused for a heading', () => {
  const odd = {
    ...plan,
    tables: {
      ...plan.tables,
      windows: tableOf(
        'windows.csv',
        `window,start,end,status,Gleis
W2,2027-03-09 23:00,2027-03-10 05:00,confirmed,Up
W1,2027-03-02 23:00,2027-03-03 05:00,confirmed,Up`,
      ),
    },
  };
  const refused = async (): Promise<PossessionDesk> => {
    const el = await fixture<PossessionDesk>(
      html`<possession-desk .engine=${createInlineEngine()} .document=${odd}></possession-desk>`,
    );
    await waitUntil(() => el.renderRoot.querySelector('.refused'), 'refused');
    return el;
  };
  afterEach(() => localStorage.removeItem('possession-fit/reading'));

  it('is mended on the desk: what the heading holds is said by one press, and undone by one', async () => {
    const el = await refused();
    expect(el.figures.results!.plan.windows).to.have.length(0);
    expect(text(el.renderRoot.querySelector('.refused'))).not.to.contain('--columns');
    button(el.renderRoot.querySelector('.refused')!, 'It holds the lines')!.click();
    await waitUntil(() => el.figures.results?.plan.windows.length === 2, 'the windows');
    expect(el.figures.results!.plan.windows[0]!.lines).to.deep.equal(['Up']);
    // Cells and headings stay as they were typed.
    expect(el.document!.tables.windows.columns).to.deep.equal(odd.tables.windows.columns);
    await waitUntil(() => !el.renderRoot.querySelector('.refused'), 'nothing refused');
    el.undo();
    await waitUntil(() => el.renderRoot.querySelector('.refused'), 'refused again');
  });

  it('is mended by leaving the heading unread, and by any other field', async () => {
    const el = await refused();
    button(el.renderRoot.querySelector('.refused')!, 'Leave it unread')!.click();
    await waitUntil(() => el.figures.results?.plan.windows.length === 2, 'the windows');
    expect(el.figures.results!.plan.windows[0]!.lines).to.deep.equal([]);
    el.undo();
    await waitUntil(() => el.renderRoot.querySelector('.refused select'), 'refused again');
    const select = el.renderRoot.querySelector<HTMLSelectElement>('.refused select')!;
    select.value = 'title';
    select.dispatchEvent(new Event('change'));
    await waitUntil(() => el.figures.results?.plan.windows[0]?.title === 'Up', 'the titles');
  });

  it('breaks no rule of accessibility, light and dark', async () => {
    const el = await refused();
    await inBothSchemes(async (scheme) => {
      el.theme = scheme;
      await el.updateComplete;
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

describe('the windows of the desk', () => {
  it('stand in order of time with the work planned in them, marked by week', async () => {
    const el = await shown();
    const rows = [...inside(el, 'possession-ribbon').querySelectorAll('[role=option]')];
    expect(rows.map((row) => row.getAttribute('data-id'))).to.deep.equal(['W1', 'W2']);
    expect(text(rows[0])).to.contain('D1').and.to.contain('w/c 1 Mar');
    expect(text(rows[1])).to.contain('D2').and.to.contain('w/c 8 Mar');
    expect(rows[0]!.querySelectorAll('.piece')).to.have.length(1);
  });

  it('tell margin and chance of those that are used', async () => {
    const el = await shown();
    await waitUntil(() => el.outlooks.handbacks.length === 2, 'handback');
    await el.updateComplete;
    const outcome = inside(el, 'possession-ribbon').querySelector('.outcome');
    expect(text(outcome)).to.match(/^2 h 00, .*%/);
  });
});

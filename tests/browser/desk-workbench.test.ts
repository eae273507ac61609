import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { DeskView, PossessionDesk } from '../../components/desk/desk.js';
import { PlanStore } from '../../components/store/index.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button, inside, tab } from './support/desk-look.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'Two nights',
  {
    windows: tableOf(
      'windows.csv',
      `window,title,start,end,status
W1,First night,2027-03-02 23:00,2027-03-03 05:00,confirmed
W2,Second night,2027-03-03 23:00,2027-03-04 05:00,confirmed`,
    ),
    work: tableOf('work.csv', 'package,activity,title,minutes\nDeck,D1,Cut out,200'),
    roster: tableOf('roster.csv', 'turn,crew,start,end\nT1,Gang,2027-03-02 21:00,2027-03-03 11:00'),
  },
  { rules: stepRules() },
);

let names = 0;
const storeName = (): string => `desk-test-${Date.now()}-${(names += 1)}`;

async function shown(store: PlanStore | null = null): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${createInlineEngine()}></possession-desk>`,
  );
  el.keeping.store = store;
  if (store && (await el.openLatest())) await el.updateComplete;
  else if (store) await el.adopt(plan);
  else el.document = plan;
  await el.updateComplete;
  return el;
}

async function go(el: PossessionDesk, view: DeskView): Promise<void> {
  tab(el, view).click();
  await el.updateComplete;
}

/** Types into a cell of the sheet as a person does, by the keyboard. */
async function type(el: PossessionDesk, row: number, column: string, value: string): Promise<void> {
  el.show('table');
  await el.updateComplete;
  const sheet = el.renderRoot.querySelector('possession-sheet')!;
  await sheet.updateComplete;
  sheet.goTo(row, column);
  const grid = sheet.shadowRoot!.querySelector<HTMLElement>('[role=grid]')!;
  grid.focus();
  const press = (target: Element, key: string): void => {
    const init = { key, bubbles: true, composed: true, cancelable: true };
    target.dispatchEvent(new KeyboardEvent('keydown', init));
  };
  press(grid, 'F2');
  await sheet.updateComplete;
  const field = sheet.shadowRoot!.querySelector<HTMLInputElement>(
    '.editor input, input.editor, textarea',
  )!;
  field.value = value;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  press(field, 'Enter');
  await el.updateComplete;
}

describe('the desk as a workbench', () => {
  it('says at once that a change leaves a row out of the plan, and why', async () => {
    const el = await shown();
    await type(el, 0, 'end', '2027-03-02 22:00');
    const news = text(el.renderRoot.querySelector('.news'));
    expect(news).to.contain('Left out of the plan by this change: windows.csv, line 2.');
    el.undo();
    await el.updateComplete;
    expect(text(el.renderRoot.querySelector('.news'))).not.to.contain('Left out');
    await type(el, 0, 'end', '2027-03-03 06:00');
    expect(text(el.renderRoot.querySelector('.news'))).not.to.contain('Left out');
  });

  it('works the figures out from a cell as soon as it is changed, and undoes it from the sheet', async () => {
    const el = await shown();
    await type(el, 0, 'end', '2027-03-03 06:00');
    expect(el.document!.tables.windows.rows[0]![3]).to.equal('2027-03-03 06:00');
    expect(el.figures.results!.ledgers[0]!.usableMinutes).to.equal(7 * 60 - 70);
    const grid = inside(el, 'possession-sheet').querySelector('[role=grid]')!;
    const undo = { key: 'z', ctrlKey: true, bubbles: true, composed: true, cancelable: true };
    grid.dispatchEvent(new KeyboardEvent('keydown', undo));
    await el.updateComplete;
    expect(el.document).to.deep.equal(plan);
    expect(el.figures.results!.ledgers[0]!.usableMinutes).to.equal(6 * 60 - 70);
  });

  it('keeps what was typed where it cannot be read, and says so in its cell', async () => {
    const el = await shown();
    await type(el, 1, 'start', 'some time');
    expect(el.document!.tables.windows.rows[1]![2]).to.equal('some time');
    expect(text(el.renderRoot.querySelector('.faulty'))).to.contain('1 fault');
    expect(el.figures.results!.plan.windows.map((window) => window.id)).to.deep.equal(['W1']);
  });

  it('says at once which windows a changed rule takes time from', async () => {
    const el = await shown();
    await go(el, 'rules');
    const event = new Event('possession-rules-change', { bubbles: true, composed: true });
    const rules = { ...plan.rules, margin: { minutes: 200 } };
    Object.assign(event, { rules, label: 'Margin: 30 to 200' });
    el.renderRoot.querySelector('possession-rules')!.dispatchEvent(event);
    await waitUntil(() => el.ruleTrial.change?.fits, 'the change weighed');
    expect(el.document!.rules.margin.minutes).to.equal(200);
    const ordinary = el.ruleTrial.change!.windows.filter((window) => window.work === 'ordinary');
    expect(ordinary.map((change) => change.minutes)).to.deep.equal([-170, -170]);
    expect(el.ruleTrial.change!.fits!.lost).to.have.length(2);
    expect(button(el.renderRoot, 'Undo')!.title).to.equal('Undo: Margin: 30 to 200');
  });

  it('does what was asked before the plan could be changed', async () => {
    const el = await fixture<PossessionDesk>(
      html`<possession-desk .engine=${createInlineEngine()}></possession-desk>`,
    );
    el.document = plan;
    // One turn after another, until the document is drawn and what opens plans is still on its way.
    while (el.isUpdatePending) await Promise.resolve();
    expect(el.plan).to.equal(null);
    el.change({ part: ['name'], value: 'One night' }, 'renamed');
    expect(el.document.name).to.equal('Two nights');
    await el.updateComplete;
    expect(el.document.name).to.equal('One night');
    expect(el.undoLabel).to.equal('renamed');
  });

  it('checks the roster of the plan', async () => {
    const el = await shown();
    await go(el, 'site');
    await waitUntil(() => text(tab(el, 'site')).includes('breach'), 'the roster');
    expect(el.outlooks.people!.breaches.length).to.be.greaterThan(0);
  });

  it('opens with what was last done to the plan, however the page ended', async () => {
    const name = storeName();
    const el = await shown(new PlanStore({ name }));
    await type(el, 0, 'title', 'Renamed');
    await waitUntil(() => el.keeping.state?.kind === 'saved', 'saved');
    expect(text(el.renderRoot.querySelector('.kept'))).to.match(/^Saved \d\d:\d\d$/);
    el.remove();
    const again = await shown(new PlanStore({ name }));
    expect(again.document!.tables.windows.rows[0]![1]).to.equal('Renamed');
  });

  it('can still undo and redo after the page was loaded again, and never twice', async () => {
    const name = storeName();
    const el = await shown(new PlanStore({ name }));
    await type(el, 0, 'title', 'Once');
    await type(el, 0, 'title', 'Twice');
    el.undo();
    await el.keeping.flush();
    el.remove();

    const again = await shown(new PlanStore({ name }));
    expect(again.document!.tables.windows.rows[0]![1]).to.equal('Once');
    again.redo();
    expect(again.document!.tables.windows.rows[0]![1]).to.equal('Twice');
    again.undo();
    again.undo();
    expect(again.document).to.deep.equal(plan);
    expect(again.undoLabel).to.equal('');
    await again.keeping.flush();
    again.remove();

    const last = await shown(new PlanStore({ name }));
    expect(last.undoLabel).to.equal('');
    expect(last.redoLabel).to.contain('title');
  });

  it('undoes nothing of one plan in another', async () => {
    const store = new PlanStore({ name: storeName() });
    const el = await shown(store);
    await type(el, 0, 'title', 'Once');
    const first = el.keeping.id!;
    await el.adopt({ ...plan, name: 'Another' });
    await el.updateComplete;
    expect(el.undoLabel).to.equal('');
    await el.openKept(first);
    await el.updateComplete;
    expect(el.undoLabel).to.contain('title');
    el.undo();
    expect(el.document).to.deep.equal(plan);
  });

  it('follows what another page does to the same plan, and undoes only its own', async () => {
    const name = storeName();
    const desk = await shown(new PlanStore({ name }));
    await desk.keeping.flush();
    const other = await shown(new PlanStore({ name }));
    await type(desk, 0, 'title', 'Mine');
    await desk.keeping.flush();
    await type(other, 1, 'title', 'Theirs');
    await other.keeping.flush();
    await waitUntil(() => desk.document!.tables.windows.rows[1]![1] === 'Theirs', 'followed');
    desk.undo();
    await desk.updateComplete;
    expect(desk.document!.tables.windows.rows.map((row) => row[1])).to.deep.equal([
      'First night',
      'Theirs',
    ]);
  });

  it('shows a plan from a link without keeping it until asked', async () => {
    const store = new PlanStore({ name: storeName() });
    const el = await shown(store);
    await el.review({ ...plan, name: 'From a link' });
    await el.updateComplete;
    expect(text(el.renderRoot.querySelector('.kept'))).to.equal('Not kept yet');
    expect((await store.list()).map((line) => line.name)).to.deep.equal(['Two nights']);
    button(el.renderRoot, 'Keep it')!.click();
    await waitUntil(async () => (await store.list()).length === 2, 'kept');
  });

  it('marks the columns that no figure is read from, after a reload too', async () => {
    const marks = (el: PossessionDesk): string[] =>
      [...inside(el, 'possession-sheet').querySelectorAll('[role=columnheader]')]
        .filter((element) => text(element).includes('not read'))
        .map((element) => text(element));
    const name = storeName();
    const el = await shown(new PlanStore({ name }));
    const { windows } = plan.tables;
    el.change(
      {
        table: 'windows',
        steps: [
          { addColumn: 'Foreman', at: windows.columns.length, fill: true },
          {
            cells: windows.rows.map((_, row) => ({
              row,
              column: windows.columns.length,
              text: 'J. Ash',
            })),
          },
        ],
      },
      'a column more',
    );
    el.show('table');
    await el.updateComplete;
    expect(marks(el)).to.have.length(1);
    await el.keeping.flush();
    el.remove();
    const again = await shown(new PlanStore({ name }));
    again.show('table');
    await again.updateComplete;
    expect(marks(again)).to.have.length(1);
    expect(marks(again)[0]).to.contain('Foreman');
  });

  it('carries nothing that was entered of one plan over to another', async () => {
    const el = await shown(new PlanStore({ name: storeName() }));
    el.outlooks.accountRequest = { window: 'W1', actualHandback: 0 };
    await el.review({ ...plan, name: 'From a link' });
    await el.updateComplete;
    expect(el.outlooks.accountRequest).to.equal(null);
  });

  it('breaks no rule of accessibility in these views, light and dark', async function () {
    const el = await shown(new PlanStore({ name: storeName() }));
    for (const view of ['rules', 'site', 'files'] as const) {
      await go(el, view);
      await inBothSchemes(async (scheme) => {
        el.theme = scheme;
        await el.updateComplete;
        expect(await axeFaults(el), `${view} ${scheme}`).to.deep.equal([]);
      });
    }
  });

  it('does not scroll sideways on a 390-pixel screen', async () => {
    const frame = document.createElement('div');
    frame.style.setProperty('width', '390px');
    document.body.append(frame);
    const el = await shown();
    frame.append(el);
    for (const view of ['work', 'rules', 'site', 'files'] as const) {
      await go(el, view);
      expect(el.renderRoot.querySelector('.desk')!.scrollWidth, view).to.be.at.most(390);
    }
    frame.remove();
  });
});

import { expect, fixture, html } from '@open-wc/testing';
import { setViewport } from '@web/test-runner-commands';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { commandsFor } from '../../components/desk/frame/commands.js';
import { deskViews, placeIds, placeOf, viewsOf } from '../../components/desk/views.js';
import { createInlineEngine, type Engine } from '../../src/engine/index.js';
import { emptyPlan, type PlanDocument } from '../../src/model/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button, tab } from './support/desk-look.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

const windows = tableOf(
  'windows.csv',
  `window,title,start,end,status
W1,First night,2027-03-02 23:00,2027-03-03 05:00,confirmed
W2,Second night,2027-03-09 23:00,2027-03-10 05:00,confirmed`,
);
const work = tableOf(
  'work.csv',
  `package,activity,title,minutes,key date
Deck,D1,Cut out,200,2027-03-31
Rail,R1,Lay rail,280,2027-03-02`,
);
const plan = aDocument('Two nights', { windows, work }, { rules: stepRules() });

async function shown(
  document: PlanDocument = plan,
  engine: Engine = createInlineEngine(),
): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk
      .engine=${engine}
      .document=${document}
      .now=${Date.UTC(2027, 1, 20)}
    ></possession-desk>`,
  );
  await el.updateComplete;
  return el;
}
const planned = async (el: PossessionDesk): Promise<void> => {
  await waitUntil(() => el.planning.allocation, 'a plan');
  await el.updateComplete;
};
const sentence = (el: PossessionDesk): string => text(el.renderRoot.querySelector('.sentence'));

describe('the places of the desk', () => {
  it('has at most six, and every view in one of them', () => {
    expect(placeIds.length).to.be.at.most(6);
    expect(placeIds.flatMap((item) => viewsOf[item])).to.deep.equal([...deskViews]);
  });

  it('says what the page is for on the first screen', async () => {
    const el = await shown();
    expect(text(el.renderRoot.querySelector('header'))).to.contain(
      'which work fits which track possession',
    );
  });

  it('never makes the page longer than the desk, in any view', async () => {
    await setViewport({ width: 1440, height: 700 });
    const el = await shown();
    await planned(el);
    for (const view of deskViews) {
      el.show(view);
      await el.updateComplete;
      const page = document.documentElement.scrollHeight;
      const end = el.getBoundingClientRect().bottom + scrollY;
      // The test's page has margins of 8 px.
      expect(page, view).to.be.at.most(Math.ceil(Math.max(end, innerHeight)) + 8);
    }
    await setViewport({ width: 800, height: 600 });
  });

  it('opens a place as it was last looked at', async () => {
    const el = await shown();
    tab(el, 'fit').click();
    await el.updateComplete;
    tab(el, 'checks').click();
    await el.updateComplete;
    expect(el.view).to.equal('urgent');
    tab(el, 'programme').click();
    await el.updateComplete;
    expect(el.view).to.equal('fit');
    expect(placeOf(el.view)).to.equal('programme');
  });

  it('opens on one sentence of answer, with the proof below it and not in the colour of alarm', async () => {
    const el = await shown();
    await planned(el);
    expect(sentence(el)).to.match(/^1 of 2 key dates met; Rail .* late$/);
    const proof = el.renderRoot.querySelector('.proof')!;
    expect(text(proof)).to.match(/proven/i);
    expect(getComputedStyle(proof).color).to.equal(
      getComputedStyle(el.renderRoot.querySelector('.named p')!).color,
    );
  });

  it('reads a key date without a time as the end of its day', async () => {
    const el = await shown();
    await planned(el);
    expect(text(el.renderRoot.querySelector('.overview'))).to.contain('the end of Wed 31 Mar 2027');
  });

  it('names the missed key date first', async () => {
    const el = await shown();
    await planned(el);
    const names = [...el.renderRoot.querySelectorAll('.dates strong')].map((element) =>
      text(element),
    );
    expect(names).to.deep.equal(['Rail', 'Deck']);
  });

  it('does not call a plan best while rows are left out or there are no rules', async () => {
    const bad = {
      ...work,
      rows: [...work.rows, ['Deck', 'D2', 'Lift in', 'soon', '2027-03-31']],
    };
    const el = await shown(aDocument('Two nights', { windows, work: bad }));
    await planned(el);
    const said = text(el.renderRoot.querySelector('.answer'));
    expect(said).to.contain('Of what could be read (1 row left out; no rules');
    expect(said).not.to.match(/Proven best|Best found/);
  });

  it('folds the panel away while it has nothing to say', async () => {
    const el = await shown();
    await planned(el);
    tab(el, 'fit').click();
    await el.updateComplete;
    expect(el.renderRoot.querySelector('aside')).to.equal(null);
  });

  it('says of an empty plan what it needs, and that nothing is met, late or proven', async () => {
    const el = await shown(emptyPlan('Empty', 'Europe/London'));
    for (const view of deskViews) {
      el.show(view);
      await el.updateComplete;
      const said = text(el.renderRoot.querySelector('.desk'));
      expect(said, view).not.to.match(/proven|none late|no date late|0 breaches|0 of 0/i);
    }
  });

  it('lists what has to be seen to by urgency, each with a way to it, and says what was not looked at', async () => {
    const bad = { ...work, rows: [...work.rows, ['Deck', 'D2', 'Lift in', 'soon', '']] };
    const el = await shown(aDocument('Two nights', { windows, work: bad }));
    tab(el, 'urgent').click();
    await waitUntil(() => el.outlooks.booked && el.outlooks.noise, 'the checks');
    await el.updateComplete;
    const rows = [...el.renderRoot.querySelectorAll('.urgent tbody tr')];
    expect(text(rows[0])).to.contain('Fault').and.to.contain('soon');
    expect(text(el.renderRoot.querySelector('.urgent'))).to.contain('No roster is given');
    button(rows[0]!, 'Show the cell')!.click();
    await waitUntil(() => el.view === 'work', 'the table');
    expect(el.workTable).to.equal('work');
  });

  it('keeps what is done with the plan in the menu of its name', async () => {
    const el = await shown();
    el.renderRoot.querySelector<HTMLElement>('.plan-name')!.click();
    await el.updateComplete;
    const menu = el.renderRoot.querySelector('.menu')!;
    for (const act of ['Save a file', 'Copy a link', 'Print', 'Tables as CSV'])
      expect(button(menu, act), act).not.to.equal(undefined);
    menu.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    await el.updateComplete;
    expect(el.renderRoot.querySelector('.menu')).to.equal(null);
  });

  it('has its help inside the page', async () => {
    const el = await shown();
    button(el.renderRoot, 'Help')!.click();
    await el.updateComplete;
    expect(text(el.renderRoot.querySelector('.help'))).to.contain('Bring files in');
  });

  it('breaks no rule of accessibility with the menu or the help open, light and dark', async () => {
    const el = await shown();
    await planned(el);
    for (const menu of ['plan', 'help'] as const) {
      el.menu = menu;
      await inBothSchemes(async (scheme) => {
        el.theme = scheme;
        await el.updateComplete;
        expect(await axeFaults(el), `${menu} ${scheme}`).to.deep.equal([]);
      });
    }
  });

  it('moves a piece of work by fewer than ten keys, as one change to be undone', async () => {
    const el = await shown();
    await planned(el);
    const before = el.document;
    const press = (target: Element, key: string): void => {
      target.dispatchEvent(
        new KeyboardEvent('keydown', { key, bubbles: true, composed: true, cancelable: true }),
      );
    };
    press(tab(el, 'programme'), '/');
    await el.updateComplete;
    await el.updateComplete;
    const field = el.renderRoot.querySelector<HTMLInputElement>('#asked')!;
    expect(el.shadowRoot!.activeElement).to.equal(field);
    field.value = 'd1 w2';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
    press(field, 'Enter');
    expect(el.undoLabel).to.equal('D1 fixed to W2');
    el.undo();
    expect(el.document).to.deep.equal(before);
  });

  it('finds views, windows, packages and activities by name', async () => {
    const el = await shown();
    for (const [asked, kind] of [
      ['booking', 'view'],
      ['second', 'window'],
      ['rail', 'package'],
      ['lay', 'activity'],
    ] as const)
      expect(
        commandsFor(el, asked).some((command) => command.kind.startsWith(kind)),
        asked,
      ).to.equal(true);
  });

  it('offers three ways to begin a blank plan, and rules as pictures with what they leave', async () => {
    const el = await shown(emptyPlan('Empty', 'Europe/London'));
    el.ruleSets = [stepRules()];
    let opened = 0;
    el.openSample = () => Promise.resolve(void (opened += 1));
    await el.updateComplete;
    expect(el.renderRoot.querySelectorAll('.door')).to.have.length(3);
    button(el.renderRoot, 'The sample')!.click();
    expect(opened).to.equal(1);
    // 20 minutes in, 20 out, 30 of margin: 480 - 70.
    expect(text(el.renderRoot.querySelector('.begin .cards'))).to.contain('6 h 50');
    button(el.renderRoot, 'Begin with these')!.click();
    expect(el.document!.rules.name).to.equal(stepRules().name);
    await el.updateComplete;
    await inBothSchemes(async (scheme) => {
      el.theme = scheme;
      await el.updateComplete;
      expect(await axeFaults(el), scheme).to.deep.equal([]);
    });
  });
});

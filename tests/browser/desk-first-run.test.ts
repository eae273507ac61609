import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { createInlineEngine } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button, inside, tab } from './support/desk-look.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

const example = aDocument(
  'An example',
  {
    windows: tableOf(
      'windows.csv',
      'window,start,end,status\nX1,2027-05-02 23:00,2027-05-03 05:00,confirmed',
    ),
    work: tableOf('work.csv', 'package,activity,minutes\nExample,E1,60'),
  },
  { rules: stepRules() },
);
const starter = { ...stepRules(), name: 'Rules to start from' };

const own = [
  new File(
    [
      'window,start,end,status\nN1,2027-03-02 23:00,2027-03-03 05:00,confirmed\nN2,2027-03-09 23:00,2027-03-10 02:00,confirmed\n',
    ],
    'our windows.csv',
  ),
  new File(['package,activity,units,minutes per unit\nPanels,P10,4,60\n'], 'our work.csv'),
];

async function shown(document: PlanDocument = example): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk
      .engine=${createInlineEngine()}
      .document=${document}
      .sampleName=${'An example'}
      .ruleSets=${[starter]}
      .now=${Date.UTC(2027, 1, 20)}
    ></possession-desk>`,
  );
  await el.updateComplete;
  return el;
}

function drag(kind: 'dragover' | 'drop', on: EventTarget, files: readonly File[]): DragEvent {
  const dataTransfer = new DataTransfer();
  for (const file of files) dataTransfer.items.add(file);
  const event = new DragEvent(kind, {
    bubbles: true,
    composed: true,
    cancelable: true,
    dataTransfer,
  });
  on.dispatchEvent(event);
  return event;
}

const reading = async (el: PossessionDesk): Promise<ShadowRoot> => {
  await waitUntil(() => el.renderRoot.querySelector('possession-import'), 'the view of files');
  const root = inside(el, 'possession-import');
  await waitUntil(() => root.querySelector('.end .strong:not([disabled])'), 'what was read');
  return root;
};

describe('the first run', () => {
  it('answers which package fits which possession in four acts, with two files of one’s own', async () => {
    const el = await shown();
    let acts = 0;
    const act = async (what: () => void): Promise<void> => {
      acts += 1;
      what();
      await el.updateComplete;
    };
    await act(() => drag('drop', el.renderRoot.querySelector('main')!, own));
    await reading(el);
    await act(() => button(el.renderRoot.querySelector('.begin')!, 'Begin with these')!.click());
    const root = await reading(el);
    await act(() => root.querySelector<HTMLElement>('.end .strong')!.click());
    await waitUntil(() => el.document?.tables.windows.rows.length === 2, 'the new plan');
    await act(() => tab(el, 'fit').click());
    const map = inside(el, 'possession-fit');
    await waitUntil(() => !text(map.querySelector('.map')).includes('working'), 'every cell');
    const cells = [...map.querySelectorAll('td')].map((element) => text(element));
    // Six hours less 20, 20 and 30 minutes hold the four; three hours less as much hold one.
    expect(cells[0]).to.contain('spare');
    expect(cells[1]).to.contain('1 of 4 units');
    expect(el.document!.rules.name).to.equal('Rules to start from');
    expect(acts).to.equal(4);
  });

  it('puts files into a new plan where the example is shown, unless a person says so', async () => {
    const el = await shown();
    await el.readFiles(own);
    await reading(el);
    const ways = el.renderRoot.querySelector('.where-to')!;
    expect(text(ways.querySelector('[aria-pressed="true"]'))).to.equal('Into a new plan');
    button(ways, 'Into this plan')!.click();
    await el.updateComplete;
    const root = await reading(el);
    root.querySelector<HTMLElement>('.end .strong')!.click();
    await el.updateComplete;
    expect(el.document!.tables.windows.rows.map((row) => row[0])).to.deep.equal(['X1', 'N1', 'N2']);
    expect(el.undoLabel).to.contain('taken in');
  });

  it('adds files to a plan of one’s own', async () => {
    const el = await shown({ ...example, name: 'Ours' });
    await el.readFiles(own);
    const root = await reading(el);
    expect(text(el.renderRoot.querySelector('.where-to [aria-pressed="true"]'))).to.equal(
      'Into this plan, Ours',
    );
    root.querySelector<HTMLElement>('.end .strong')!.click();
    await el.updateComplete;
    expect(el.document!.tables.windows.rows).to.have.length(3);
  });

  it('says on every view what a drop does, and takes nothing that is not a file', async () => {
    const el = await shown();
    for (const view of ['windows', 'fit', 'rules', 'urgent'] as const) {
      el.show(view);
      await el.updateComplete;
      expect(drag('dragover', el, own).defaultPrevented, view).to.equal(true);
      await el.updateComplete;
      expect(text(el.renderRoot.querySelector('.dropping'))).to.contain('Nothing changes until');
      if (view === 'fit')
        await inBothSchemes(async () => {
          expect(await axeFaults(el)).to.deep.equal([]);
        });
      el.dispatchEvent(new DragEvent('dragleave', { bubbles: true }));
      await el.updateComplete;
      expect(el.renderRoot.querySelector('.dropping')).to.equal(null);
    }
    const plainText = new DataTransfer();
    plainText.setData('text/plain', 'D10');
    const event = new DragEvent('dragover', { cancelable: true, dataTransfer: plainText });
    el.dispatchEvent(event);
    expect(event.defaultPrevented).to.equal(false);
  });

  it('is accessible while files and rules are chosen', async () => {
    const el = await shown();
    await el.readFiles(own);
    await reading(el);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

describe('the head of every printed page', () => {
  it('names the plan, the view, the date, and which plan was agreed', async () => {
    const el = await shown();
    el.show('fit');
    await el.updateComplete;
    expect(el.paperHead).to.deep.equal({
      start: 'An example – Programme, what fits where',
      end: 'Sat 20 Feb 2027, 00:00; no plan agreed',
    });
    // A place with one view is named once; a part of a view by its own name.
    el.show('handback');
    expect(el.paperHead.start).to.equal('An example – Handback');
    el.costPart = 'options';
    el.show('cost');
    expect(el.paperHead.start).to.equal('An example – Cost, options side by side');
    el.planPart = 'where';
    el.show('plan');
    expect(el.paperHead.start).to.equal('An example – Programme, where and when');
  });
});

describe('a desk whose page is still getting the plan', () => {
  const none = ['No plan yet', 'nothing yet', 'Import windows'];

  it('does not say that there is none, until it is known', async () => {
    const el = await fixture<PossessionDesk>(
      html`<possession-desk .engine=${createInlineEngine()} .opening=${true}></possession-desk>`,
    );
    await el.updateComplete;
    const said = (): string => el.shadowRoot!.textContent ?? '';
    expect(said()).to.contain('Opening the plan');
    for (const words of none) expect(said()).not.to.contain(words);
    el.opening = false;
    await el.updateComplete;
    for (const words of none) expect(said()).to.contain(words);
  });
});

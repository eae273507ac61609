import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { WindowSelectEvent } from '../../components/ribbon/window-select-event.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'A weekend and a night',
  {
    windows: tableOf(
      'windows.csv',
      `window,title,start,end,isolation,status
W1,Weekend,2027-03-05 22:00,2027-03-08 05:00,OV1 [23:30-07:50];OV2 [2027-03-07 23:00 - 2027-03-08 03:00],confirmed
W2,Night,2027-03-09 23:00,2027-03-10 05:00,OV1,confirmed`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,minutes,isolation,window
Wires,D1,Renew wires,180,OV1,
Wires,D2,Adjust,60,OV1,
Deck,D3,Clear the site,600,,`,
    ),
  },
  { rules: stepRules() },
);

const text = (node: Element | null): string => node?.textContent?.replace(/\s+/g, ' ').trim() ?? '';

async function opened(): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${createInlineEngine()} .document=${plan}></possession-desk>`,
  );
  await waitUntil(() => el.planning.allocation, 'a plan');
  el.renderRoot.querySelector('possession-ribbon')!.dispatchEvent(new WindowSelectEvent('W1'));
  await el.updateComplete;
  await waitUntil(() => form(el), 'the form');
  form(el)!.closest('details')!.open = true;
  return el;
}

const form = (el: PossessionDesk): HTMLFormElement | null =>
  el.renderRoot.querySelector('.change form');
const ahead = (el: PossessionDesk): Element | null => el.renderRoot.querySelector('.ahead');

async function type(el: PossessionDesk, name: string, value: string): Promise<string> {
  const field = form(el)!.querySelector<HTMLInputElement>(`[name=${name}]`)!;
  field.value = value;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  await waitUntil(() => !el.cutPreview.busy && el.cutPreview.effect, 'what it would do');
  await el.updateComplete;
  return text(ahead(el));
}

describe('the form that cuts a window', function () {
  it('tells beforehand, by name, what would leave the window and what becomes of its isolation', async () => {
    const el = await opened();
    expect(ahead(el)).to.equal(null);
    const before = el.document;
    const said = await type(el, 'end', '2027-03-05 23:50');
    expect(said).to.contain('D3 Clear the site: from W1 to no place');
    expect(said).to.contain('D1 Renew wires: from W1 to W2');
    expect(said).to.contain('OV2: not dead in the window any more');
    expect(said).to.contain('OV1: dead for less');
    expect(el.document).to.equal(before);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });

  it('says that nothing would move where all work still fits', async () => {
    const el = await opened();
    expect(await type(el, 'end', '2027-03-08 04:50')).to.contain(
      'No piece of the plan would leave its window',
    );
  });

  it('says that all work loses its place where the window is withdrawn or cannot be read', async () => {
    const el = await opened();
    expect(await type(el, 'end', 'soon')).to.contain('As typed the window leaves the plan');
    await type(el, 'end', '2027-03-08 05:00');
    expect(await type(el, 'status', 'withdrawn')).to.contain('pieces of the plan would leave');
  });

  it('does what it said, and forgets it', async () => {
    const el = await opened();
    await type(el, 'end', '2027-03-06 12:00');
    form(el)!.requestSubmit();
    await el.updateComplete;
    expect(ahead(el)).to.equal(null);
    await waitUntil(
      () => el.figures.results?.plan.windows[0]!.end === Date.UTC(2027, 2, 6, 12),
      'cut',
    );
    expect(el.figures.results!.faults.filter((fault) => fault.severity === 'error')).to.deep.equal(
      [],
    );
    expect(
      el.figures.results!.plan.windows[0]!.isolation.map((section) => section.section),
    ).to.deep.equal(['OV1']);
  });

  it('gives a window like it the same isolation on its own dates, in the plan with no fault', async () => {
    const el = await opened();
    const add = [...el.renderRoot.querySelectorAll<HTMLFormElement>('.change form')][1]!;
    const cells = { window: 'W3', start: '2027-03-12 22:00', end: '2027-03-15 05:00' };
    for (const [name, value] of Object.entries(cells))
      add.querySelector<HTMLInputElement>(`[name=${name}]`)!.value = value;
    add.requestSubmit();
    await waitUntil(
      () => el.figures.results?.plan.windows.some((window) => window.id === 'W3'),
      'the new window in the plan',
    );
    const { windows } = el.document!.tables;
    expect(windows.rows.at(-1)![windows.columns.indexOf('isolation')]).to.equal(
      'OV1 [23:30-07:50]; OV2 [2027-03-14 23:00+00:00 - 2027-03-15 03:00+00:00]',
    );
    expect(el.figures.results!.faults.filter((fault) => fault.severity === 'error')).to.deep.equal(
      [],
    );
  });
});

import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import type { PossessionAccount } from '../../components/account/account.js';
import { AccountAskEvent } from '../../components/account/account-ask-event.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { emptyPlan } from '../../src/model/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
import { button, tab } from './support/desk-look.js';
import { twoNights } from './support/two-nights.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'A plan with prices',
  {
    windows: twoNights,
    work: tableOf(
      'work.csv',
      `package,activity,title,units,minutes per unit,minutes low,minutes high
Deck,D1,Lift units,8,35,30,60`,
    ),
  },
  { rules: stepRules({ leadIn: { low: 15, high: 40 } }), prices: minuteBook },
);

const open = (): Promise<PossessionDesk> =>
  fixture<PossessionDesk>(
    html`<possession-desk .engine=${createInlineEngine()} .document=${plan}></possession-desk>`,
  );
const shadow = (el: PossessionDesk, css: string): ShadowRoot | null =>
  el.renderRoot.querySelector(css)?.shadowRoot ?? null;

describe('cost on the desk', () => {
  it('shows 45, 90 and 180 minutes by head one action after the plan is open, and a report one after that', async () => {
    const el = await open();
    await el.updateComplete;
    tab(el, 'cost').click();
    await waitUntil(
      () => shadow(el, 'possession-overrun')?.querySelectorAll('.compare thead th').length === 4,
      'three columns',
    );
    const heads = [...shadow(el, 'possession-overrun')!.querySelectorAll('.compare thead th')];
    expect(heads.map((head) => head.textContent.trim().split(/\s{2,}/)[0])).to.deep.equal([
      'Amount, GBP',
      '45 min',
      '1 h 30',
      '3 h',
    ]);
    button(shadow(el, 'possession-overrun')!, 'Report')!.click();
    await waitUntil(() => shadow(el, 'possession-report')?.querySelector('article'), 'report');
    const text = shadow(el, 'possession-report')!.textContent;
    for (const words of ['Booked end', '45 min late', 'Not priced', 'Cautions', 'planning aid'])
      expect(text).to.contain(words);
    button(shadow(el, 'possession-report')!, 'Back')!.click();
    await el.updateComplete;
    expect(shadow(el, 'possession-overrun')).not.to.equal(null);
    // A sum from before the plan was found is reckoned anew: the report names the plan that its figures rest on.
    await waitUntil(() => !el.planning.busy && el.planning.allocation, 'a plan');
    await waitUntil(() => el.outlooks.pricedWith === el.planning.allocation, 'priced by it');
    el.outlooks.pricedWith = null;
    const before = el.outlooks.price;
    button(shadow(el, 'possession-overrun')!, 'Report')!.click();
    await waitUntil(() => shadow(el, 'possession-report')?.querySelector('article'), 'report');
    expect(el.outlooks.price).not.to.equal(before);
    expect(el.outlooks.pricedWith).to.equal(el.planning.allocation);
    expect(shadow(el, 'possession-report')!.textContent).to.contain('proposed by a search');
  });

  it('comes to 45, 90 and 180 minutes by head in two actions from an empty desk: the sample, Cost', async () => {
    const engine = createInlineEngine();
    const paths = ['windows', 'work', 'resources', 'trains'].map((text) => `${text}.csv`);
    const files = await Promise.all(
      [...paths, 'prices.json', 'rules/electrified-two-track.json'].map(async (path) => {
        const answer = await fetch(new URL(`../../sample-csv/${path}`, import.meta.url));
        return {
          name: path.replace(/^.*\//, ''),
          bytes: new Uint8Array(await answer.arrayBuffer()),
        };
      }),
    );
    const el = await fixture<PossessionDesk>(
      html`<possession-desk
        .engine=${engine}
        .document=${emptyPlan('Untitled', 'Europe/London')}
      ></possession-desk>`,
    );
    el.openSample = async () => {
      const { document } = await engine.importFiles(files, emptyPlan('Sample', 'Europe/London'));
      await el.adopt(document);
    };
    await waitUntil(() => button(el.renderRoot, 'The sample'), 'a door to the sample');
    const actions = [
      () => button(el.renderRoot, 'The sample')!.click(),
      () => tab(el, 'cost').click(),
    ];
    actions[0]!();
    await waitUntil(() => el.document?.tables.windows.rows.length, 'the sample is open');
    await el.updateComplete;
    actions[1]!();
    const table = (): HTMLTableElement | null | undefined =>
      shadow(el, 'possession-overrun')?.querySelector<HTMLTableElement>('.compare');
    await waitUntil(() => table()?.tHead?.rows[0]!.cells.length === 4, 'three columns');
    expect(actions.length).to.be.at.most(3);
    const heads = [...table()!.tHead!.rows[0]!.cells].map((cell) => cell.textContent.trim());
    expect(heads.slice(1).map((head) => head.split(/\s{2,}/)[0])).to.deep.equal([
      '45 min',
      '1 h 30',
      '3 h',
    ]);
    const first = [...table()!.tBodies[0]!.rows].map((row) => row.cells[0]!.textContent.trim());
    expect(first.join()).to.contain('Delay to trains');
  });

  it('has what was entered of a late handback again after the page is loaded anew', async () => {
    const first = await open();
    await first.updateComplete;
    tab(first, 'cost').click();
    await first.updateComplete;
    button(first.renderRoot, 'After the event')!.click();
    await first.updateComplete;
    const account = (el: PossessionDesk): PossessionAccount | null =>
      el.renderRoot.querySelector<PossessionAccount>('possession-account');
    await waitUntil(() => account(first)?.window, 'account');
    const { id, end } = account(first)!.window!;
    account(first)!.dispatchEvent(
      new AccountAskEvent({ window: id, actualHandback: end + 45 * 60_000 }),
    );
    await waitUntil(() => first.outlooks.account, 'the account');
    first.remove();

    const again = await open();
    await again.updateComplete;
    tab(again, 'cost').click();
    await again.updateComplete;
    button(again.renderRoot, 'After the event')!.click();
    await waitUntil(() => again.outlooks.account?.overrunMinutes === 45, 'the account again');
    again.remove();
    for (const key of Object.keys(localStorage))
      if (key.startsWith('possession-fit/account/')) localStorage.removeItem(key);
  });
});

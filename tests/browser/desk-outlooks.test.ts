import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { createInlineEngine, type Engine } from '../../src/engine/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
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
W2,Second night,2027-03-03 23:00,2027-03-04 05:00,confirmed
W3,Third night,2027-03-04 23:00,2027-03-05 05:00,confirmed`,
    ),
    work: tableOf(
      'work.csv',
      `package,activity,title,after,minutes,minutes low,minutes high,resources,key date,made good by
Deck,D1,Cut out,,200,180,260,crew:1,2027-03-06,none
Deck,D2,Lift in,D1,200,180,300,crew:1,2027-03-06,none`,
    ),
    resources: tableOf('resources.csv', 'resource,capacity\ncrew,1'),
  },
  {
    rules: stepRules({ leadIn: { low: 15, high: 40 }, leadOut: { low: 15, high: 40 } }),
    prices: minuteBook,
  },
);

async function shown(engine: Engine = createInlineEngine()): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk
      .engine=${engine}
      .document=${plan}
      .now=${Date.UTC(2027, 2, 2, 23, 30)}
    ></possession-desk>`,
  );
  await el.updateComplete;
  return el;
}

async function planned(el: PossessionDesk): Promise<void> {
  tab(el, 'plan').click();
  await waitUntil(() => text(tab(el, 'plan')).includes('proven'), 'a plan');
}

/** A form of the panel, which is loaded when something is first picked. */
async function formWith(el: PossessionDesk, field: string): Promise<HTMLFormElement> {
  const found = (): HTMLFormElement | undefined =>
    [...el.renderRoot.querySelectorAll('form')].find((form) => form.querySelector(field));
  await waitUntil(found, `a form with ${field}`);
  return found()!;
}

async function pick(el: PossessionDesk, window: string): Promise<void> {
  tab(el, 'windows').click();
  await el.updateComplete;
  inside(el, 'possession-ribbon').querySelector<HTMLElement>(`[data-id=${window}]`)!.click();
  await el.updateComplete;
}

describe('the desk beyond the fit', () => {
  beforeEach(() => localStorage.clear());

  it('plans again when a window is withdrawn, and sets both plans side by side', async () => {
    const el = await shown();
    await planned(el);
    await pick(el, 'W1');
    const form = await formWith(el, 'select');
    form.querySelector('select')!.value = 'withdrawn';
    form.requestSubmit();
    await waitUntil(() => el.view === 'plan', 'the compared plans');
    await el.updateComplete;
    expect(el.document!.tables.windows.rows[0]![4]).to.equal('withdrawn');
    const compared = text(inside(el, 'possession-compare'));
    expect(compared).to.contain('D1');
    expect(compared).to.contain('W3');
  });

  it('undoes and redoes a change of a window, by button and by key', async () => {
    const el = await shown();
    await planned(el);
    await pick(el, 'W1');
    expect(button(el.renderRoot, 'Undo')).to.equal(undefined);
    const form = await formWith(el, 'select');
    form.querySelector('select')!.value = 'withdrawn';
    form.requestSubmit();
    await waitUntil(() => el.view === 'plan', 'the compared plans');
    await el.updateComplete;
    button(el.renderRoot, 'Undo')!.click();
    await el.updateComplete;
    expect(el.document).to.deep.equal(plan);
    expect(text(tab(el, 'windows'))).to.contain('3 booked');
    const key = { key: 'y', ctrlKey: true, bubbles: true, composed: true, cancelable: true };
    tab(el, 'plan').dispatchEvent(new KeyboardEvent('keydown', key));
    await el.updateComplete;
    expect(el.document!.tables.windows.rows[0]![4]).to.equal('withdrawn');
    expect(button(el.renderRoot, 'Undo')!.title).to.equal('Undo: window W1 changed');
  });

  it('takes in a window offered at short notice, like the one picked', async () => {
    const el = await shown();
    await planned(el);
    await pick(el, 'W1');
    const form = await formWith(el, '[name=window]');
    const fill = (name: string, value: string): void => {
      form.querySelector<HTMLInputElement>(`[name=${name}]`)!.value = value;
    };
    fill('window', 'W0');
    fill('start', '2027-03-01 23:00');
    fill('end', '2027-03-02 05:00');
    form.requestSubmit();
    await waitUntil(() => el.view === 'plan', 'the compared plans');
    expect(el.document!.tables.windows.rows.at(-1)).to.deep.equal([
      'W0',
      'Offered at short notice',
      '2027-03-01 23:00',
      '2027-03-02 05:00',
      'offered',
    ]);
  });

  it('keeps a piece of work where the planner fixes it', async () => {
    const el = await shown();
    await planned(el);
    inside(el, 'possession-plan')
      .querySelector('.work')!
      .dispatchEvent(new MouseEvent('click', { bubbles: true, composed: true }));
    await el.updateComplete;
    const choice = el.renderRoot.querySelector<HTMLSelectElement>('#to')!;
    choice.value = 'W2';
    button(el.renderRoot, 'Move it there')!.click();
    await waitUntil(
      () =>
        el.document!.tables.work.columns.includes('window') &&
        text(tab(el, 'plan')).includes('proven'),
      'a plan with the fixed work',
    );
    expect(el.document!.tables.work.rows.map((row) => row.at(-1))).to.include('W2');
  });

  it('gives margin and chance of every window that takes work, and a log that outlives the page', async () => {
    const el = await shown();
    tab(el, 'handback').click();
    await waitUntil(() => text(tab(el, 'handback')).includes('held'), 'handback');
    const root = inside(el, 'possession-handback');
    expect(text(root)).to.contain('W1');
    button(el.renderRoot, 'During the shift')!.click();
    await waitUntil(() => button(root, 'Started') !== undefined, 'the shift view');
    button(root, 'Started')!.click();
    await el.updateComplete;
    const kept = Object.keys(localStorage).filter((key) => key.includes('Two nights'));
    expect(kept).to.have.length(1);
    el.remove();
    const again = await shown();
    tab(again, 'handback').click();
    await waitUntil(() => text(tab(again, 'handback')).includes('held'), 'handback');
    await again.updateComplete;
    expect(again.renderRoot.querySelector('possession-handback')!.log).to.have.length(1);
  });

  it('goes on with the handback of the other windows while a price is asked for', async () => {
    const inline = createInlineEngine();
    let goOn = (): void => undefined;
    const gate = new Promise<void>((resolve) => (goOn = resolve));
    const el = await shown({
      ...inline,
      handback: async (document, request, signal, onProgress) => {
        const found = await inline.handback(document, request, signal);
        for (const [index, latest] of found.entries()) {
          if (index > 0) await gate;
          onProgress?.({ done: index + 1, total: found.length, latest });
        }
        return found;
      },
    });
    tab(el, 'handback').click();
    await waitUntil(() => el.outlooks.handbacks.length === 1, 'the first');
    // Nothing is counted as held while not all windows are known.
    expect(text(tab(el, 'handback'))).to.contain('working');
    tab(el, 'cost').click();
    await waitUntil(() => text(tab(el, 'cost')).includes('GBP'), 'a price');
    goOn();
    await waitUntil(() => text(tab(el, 'handback')).includes('2 of 2 held'), 'both');
  });

  it('prices an overrun and says what is to be expected once the handback is simulated', async () => {
    const el = await shown();
    tab(el, 'handback').click();
    await waitUntil(() => text(tab(el, 'handback')).includes('held'), 'handback');
    tab(el, 'cost').click();
    await waitUntil(() => text(tab(el, 'cost')).includes('GBP'), 'a price');
    await el.updateComplete;
    const { answer } = el.renderRoot.querySelector('possession-overrun')!;
    expect(answer!.at.total).to.equal('600.00');
    expect(answer!.expected).not.to.equal(null);
  });

  it('tells which booking dates are late', async () => {
    const el = await shown();
    tab(el, 'booking').click();
    await waitUntil(() => text(tab(el, 'booking')).includes('late'), 'dates');
  });

  it('breaks no rule of accessibility in these views, light and dark', async function () {
    const el = await shown();
    tab(el, 'handback').click();
    await waitUntil(() => text(tab(el, 'handback')).includes('held'), 'handback');
    for (const view of ['plan', 'handback', 'cost', 'booking'] as const) {
      tab(el, view).click();
      await el.updateComplete;
      await inBothSchemes(async (scheme) => {
        el.theme = scheme;
        await el.updateComplete;
        expect(await axeFaults(el), `${view} ${scheme}`).to.deep.equal([]);
      });
    }
  });
});

import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { DeskView, PossessionDesk } from '../../components/desk/desk.js';
import type { Results } from '../../src/engine/types.js';
import { cautions } from '../../src/model/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { deskViews, placeOf, type PlaceId } from '../../components/desk/views.js';
import { frame, planDocument, press, results, sampleEngine } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

async function shown(engine = sampleEngine()): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${engine} .document=${planDocument}></possession-desk>`,
  );
  await el.updateComplete;
  return el;
}
const deep = <T extends Element>(el: PossessionDesk, child: string, selector: string): T =>
  el.renderRoot.querySelector(child)!.shadowRoot!.querySelector<T>(selector)!;
const text = (node: Element | null | undefined): string =>
  (node?.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
const tab = (el: PossessionDesk, view: DeskView | PlaceId): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(`#tab-${view}`)!;
const told = (el: PossessionDesk): string =>
  text(el.renderRoot.querySelector('possession-why')!.shadowRoot!.querySelector('section'));

async function go(el: PossessionDesk, view: DeskView | PlaceId): Promise<void> {
  tab(el, view).click();
  await el.updateComplete;
  await frame();
  await el.updateComplete;
}

describe('possession-desk', () => {
  it('shows every caution in every view', async () => {
    const el = await shown();
    for (const view of deskViews) {
      await go(el, view);
      for (const caution of cautions)
        expect(text(el.renderRoot.querySelector('footer'))).to.contain(caution);
    }
  });

  it('says in its tabs how much there is', async () => {
    const el = await shown();
    expect(text(tab(el, 'windows'))).to.contain('4 booked');
    expect(text(tab(el, 'fit'))).to.contain('3 of 12');
  });

  it('explains the window that is picked', async () => {
    const el = await shown();
    deep<HTMLElement>(el, 'possession-ribbon', '[data-id=S2]').click();
    await el.updateComplete;
    expect(told(el)).to.contain('Usable time, window S2');
    expect(told(el)).to.contain('1 of 3 packages would fit');
  });

  it('explains a row of the ledger by its rule', async () => {
    const el = await shown();
    deep<HTMLElement>(el, 'possession-ribbon', '[data-id=S2]').click();
    await el.updateComplete;
    deep<HTMLElement>(el, 'possession-ledger', '.step:nth-of-type(2)').click();
    await el.updateComplete;
    expect(told(el)).to.contain('Invented for this test');
  });

  it('shows in the sheet the window that is picked in the picture', async () => {
    const el = await shown();
    deep<HTMLElement>(el, 'possession-ribbon', '[data-id=B3]').click();
    await go(el, 'table');
    await frame();
    expect(
      deep(el, 'possession-sheet', '[role=grid]').getAttribute('aria-activedescendant'),
    ).to.equal('cell-2-0');
  });

  it('picks the window whose row is picked in the sheet', async () => {
    const el = await shown();
    await go(el, 'table');
    deep<HTMLElement>(el, 'possession-sheet', '#cell-2-0').click();
    await el.updateComplete;
    expect(told(el)).to.contain('window B3');
  });

  it('explains a verdict and leads back to the package in its sheet', async () => {
    const el = await shown();
    await go(el, 'fit');
    deep<HTMLElement>(el, 'possession-fit', 'td[data-row="1"][data-column="0"]').click();
    await el.updateComplete;
    expect(told(el)).to.contain('30 min short');
    const links = [
      ...el.renderRoot
        .querySelector('possession-why')!
        .shadowRoot!.querySelectorAll<HTMLElement>('.links button'),
    ];
    links.find((link) => link.textContent.includes('Package'))!.click();
    for (let turn = 0; turn < 5; turn += 1) await frame();
    await el.updateComplete;
    expect(el.view).to.equal('work');
    expect(
      deep(el, 'possession-sheet', '[role=grid]').getAttribute('aria-activedescendant'),
    ).to.equal('cell-1-0');
  });

  it('makes the first plan without being asked, once, and says how good it is when asked', async () => {
    const engine = sampleEngine();
    const el = await shown(engine);
    await frame();
    expect(engine.asked).to.deep.equal(['recompute', 'allocate']);
    expect(el.renderRoot.querySelector('possession-why')).to.equal(null);
    el.renderRoot.querySelector<HTMLElement>('.proof button')!.click();
    await el.updateComplete;
    expect(told(el)).to.contain('Best found');
    await go(el, 'fit');
    await go(el, 'plan');
    expect(engine.asked.filter((item) => item === 'allocate')).to.have.length(1);
  });

  it('lists the faults with ways to their cells', async () => {
    const el = await shown();
    el.renderRoot.querySelector<HTMLElement>('.faulty')!.click();
    await el.updateComplete;
    await waitUntil(() => told(el).includes('"x" is not a number.'));
    deep<HTMLElement>(el, 'possession-why', '.rows button').click();
    for (let turn = 0; turn < 5; turn += 1) await frame();
    expect(
      deep(el, 'possession-sheet', '[role=grid]').getAttribute('aria-activedescendant'),
    ).to.equal('cell-1-2');
  });

  it('says so when the figures cannot be worked out', async () => {
    const el = await shown(
      sampleEngine({ recompute: () => Promise.reject(new Error('lost worker')) }),
    );
    expect(text(el.renderRoot.querySelector('[role=alert]'))).to.contain('lost worker');
  });

  it('shows the figures of the latest document when an earlier answer comes late', async () => {
    const late: ((answer: Results) => void)[] = [];
    let calls = 0;
    const engine = sampleEngine({
      recompute: () => {
        calls += 1;
        return calls === 1
          ? new Promise((resolve) => late.push(resolve))
          : Promise.resolve(results);
      },
    });
    const el = await fixture<PossessionDesk>(html`<possession-desk></possession-desk>`);
    el.engine = engine;
    el.document = planDocument;
    await frame();
    el.document = { ...planDocument, name: 'Later' };
    await frame();
    late[0]!({ ...results, packages: [] });
    await el.updateComplete;
    expect(text(tab(el, 'work'))).to.contain('3 packages');
  });

  for (const [key, from, to] of [
    ['ArrowRight', 'programme', 'handback'],
    ['ArrowLeft', 'programme', 'data'],
    ['End', 'programme', 'data'],
    ['Home', 'cost', 'programme'],
  ] as const)
    it(`${key} on the tabs goes from ${from} to ${to}`, async () => {
      const el = await shown();
      await go(el, from);
      press(tab(el, from), key);
      await el.updateComplete;
      await frame();
      expect(placeOf(el.view)).to.equal(to);
      expect(el.shadowRoot!.activeElement).to.equal(tab(el, to));
    });

  it('follows the system until told otherwise, then turns light and dark about', async () => {
    const el = await shown();
    const button = el.renderRoot.querySelector<HTMLElement>('.tools button:last-of-type')!;
    expect(el.theme).to.equal('');
    button.click();
    const first = el.theme;
    await el.updateComplete;
    button.click();
    expect([first, el.theme].sort()).to.deep.equal(['dark', 'light']);
    expect(getComputedStyle(el).colorScheme).to.equal(el.theme === 'dark' ? 'light' : 'dark');
    await el.updateComplete;
    expect(getComputedStyle(el).colorScheme).to.equal(el.theme);
  });

  it('does not scroll sideways on a 390-pixel screen', async () => {
    const frame = document.createElement('div');
    frame.style.setProperty('width', '390px');
    document.body.append(frame);
    const el = await fixture<PossessionDesk>(
      html`<possession-desk .engine=${sampleEngine()} .document=${planDocument}></possession-desk>`,
      { parentNode: frame },
    );
    for (const view of deskViews) {
      await go(el, view);
      const desk = el.renderRoot.querySelector('.desk')!;
      expect(desk.scrollWidth, view).to.be.at.most(390);
    }
  });

  for (const view of deskViews)
    it(`has no accessibility faults in the view of ${view}, light and dark`, async () => {
      const el = await shown();
      await go(el, view);
      await inBothSchemes(async (scheme) => {
        el.theme = scheme;
        await el.updateComplete;
        expect(await axeFaults(el)).to.deep.equal([]);
      });
    });
});

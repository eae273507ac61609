import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/ledger/define.js';
import type { LedgerAskEvent } from '../../components/ledger/ledger-ask-event.js';
import type { PossessionLedger } from '../../components/ledger/ledger.js';
import { stepsOf } from '../../components/ledger/steps.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { ledgers, night, withdrawn } from './support/samples.js';

const shown = (): Promise<PossessionLedger> =>
  fixture(html`<possession-ledger .window=${night} .ledger=${ledgers[0]!}></possession-ledger>`);
const bars = (el: PossessionLedger): SVGRectElement[] => [
  ...el.renderRoot.querySelectorAll<SVGRectElement>('rect[data-minutes]'),
];
const num = (bar: Element, name: string): number => Number(bar.getAttribute(name) ?? 0);

describe('possession-ledger', () => {
  it('draws bars that add up to the booked time', async () => {
    const el = await shown();
    const [gross, ...rest] = bars(el);
    const wide = rest.reduce((sum, bar) => sum + num(bar, 'width'), 0);
    expect(wide).to.be.closeTo(num(gross!, 'width'), 0.001);
    expect(rest.reduce((sum, bar) => sum + num(bar, 'data-minutes'), 0)).to.equal(360);
  });

  it('stands each deduction on what it leaves', async () => {
    const el = await shown();
    const [gross, ...rest] = bars(el);
    let end = num(gross!, 'width');
    for (const bar of rest.slice(0, -1)) {
      expect(num(bar, 'x') + num(bar, 'width')).to.be.closeTo(end, 0.001);
      end = num(bar, 'x');
    }
    expect(num(rest.at(-1)!, 'width')).to.be.closeTo(end, 0.001);
    expect(stepsOf(ledgers[0]!).at(-1)!.left).to.equal(ledgers[0]!.usableMinutes);
  });

  it('asks why of every row and of both sums', async () => {
    const el = await shown();
    const asked: LedgerAskEvent['row'][] = [];
    el.addEventListener('possession-ledger-ask', (event) => asked.push(event.row));
    for (const step of el.renderRoot.querySelectorAll<HTMLElement>('.step')) step.click();
    expect(asked).to.deep.equal(['gross', 0, 2, 3, 4, 'usable']);
  });

  it('names the window it asks about', async () => {
    const el = await shown();
    setTimeout(() => el.renderRoot.querySelector<HTMLElement>('.step')!.click());
    const event = await oneEvent<LedgerAskEvent>(el, 'possession-ledger-ask');
    expect(event.window).to.equal('N1');
  });

  it('says why a window takes no work', async () => {
    const el = await shown();
    el.window = withdrawn;
    el.ledger = ledgers[3]!;
    await el.updateComplete;
    expect(el.renderRoot.querySelector('.barred')!.textContent).to.equal(
      'The window is withdrawn.',
    );
  });

  it('says by how much the deductions are too long', async () => {
    const el = await shown();
    el.ledger = { ...ledgers[0]!, shortfallMinutes: 25 };
    await el.updateComplete;
    expect(el.renderRoot.querySelector('.shortfall')!.textContent).to.contain('25 min');
  });

  it('lists every row of the ledger in the table, with the sum', async () => {
    const el = await shown();
    el.asTable = true;
    await el.updateComplete;
    const figures = [...el.renderRoot.querySelectorAll('tbody .figure')].map((element) =>
      Number(element.textContent),
    );
    expect(figures).to.deep.equal([30, 240, 30, 30, 30, 360, 240]);
  });

  it('is printed as a picture and as a table, with the cautions', async () => {
    const el = await shown();
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(el.renderRoot.querySelectorAll('.step').length).to.be.greaterThan(0);
    expect(el.renderRoot.querySelectorAll('tbody tr').length).to.equal(7);
    expect(el.renderRoot.querySelector('.on-paper')!.textContent).to.contain('planning aid');
    globalThis.dispatchEvent(new Event('afterprint'));
    expect(el.renderRoot.querySelector('table')).to.equal(null);
  });

  it('says other words when it is given them', async () => {
    const el = await shown();
    el.strings = { usable: 'Nutzbar' };
    await el.updateComplete;
    expect([...el.renderRoot.querySelectorAll('.sum')].at(-1)!.textContent).to.contain('Nutzbar');
  });

  it('has no accessibility faults empty, as a picture and as a table, light and dark', async () => {
    const el = await shown();
    await inBothSchemes(async () => {
      for (const asTable of [false, true]) {
        el.asTable = asTable;
        el.asked = 'usable';
        await el.updateComplete;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
    el.ledger = null;
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
  });
});

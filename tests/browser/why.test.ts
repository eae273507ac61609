import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/why/define.js';
import { explainFit } from '../../components/why/explain-fit.js';
import { explainLedger } from '../../components/why/explain-ledger.js';
import type { WhyLinkEvent } from '../../components/why/why-events.js';
import type { PossessionWhy } from '../../components/why/why.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import {
  activities,
  fits,
  ledgers,
  night,
  packages,
  rules,
  springNight,
} from './support/samples.js';

const shown = (explanation: PossessionWhy['explanation']): Promise<PossessionWhy> =>
  fixture(html`<possession-why .explanation=${explanation}></possession-why>`);
const text = (el: Element): string => el.textContent.replaceAll(/\s+/g, ' ').trim();

describe('possession-why', () => {
  it('says how to ask while nothing is asked', async () => {
    const el = await shown(null);
    expect(el.renderRoot.textContent).to.contain('Pick any figure');
  });

  it('shows a deduction with its rule and the source of the rule', async () => {
    const el = await shown(explainLedger(ledgers[0]!, night, rules, 0));
    expect(text(el.renderRoot.querySelector('.number')!)).to.equal('30 min');
    expect(text(el.renderRoot.querySelector('.rule')!)).to.contain(
      'Source: Invented for this test',
    );
  });

  it('says when a rule gives no source', async () => {
    const el = await shown(explainLedger(ledgers[0]!, night, rules, 4));
    expect(text(el.renderRoot.querySelector('.rule')!)).to.contain('not stated in the rule set');
  });

  it('shows a usable time as the booked time less every deduction', async () => {
    const el = await shown(explainLedger(ledgers[0]!, night, rules, 'usable'));
    const rows = [...el.renderRoot.querySelectorAll('.rows .figure')].map(text);
    expect(rows).to.deep.equal(['6 h', '−30 min', '−30 min', '−30 min', '−30 min', '4 h']);
  });

  it('says that clocks go forward in the window', () => {
    const told = explainLedger(ledgers[1]!, springNight, rules, 'gross');
    expect(told.figure).to.equal('9 h 10');
    expect(told.sentence).to.contain('Clocks go forward 1 h');
  });

  it('gives every reason of a no', async () => {
    const verdict = fits.find((fit) => fit.package === 'Track' && fit.window === 'N1')!;
    const el = await shown(explainFit(verdict, packages[1]!, night, activities));
    expect(text(el.renderRoot.querySelector('.number')!)).to.equal('30 min short');
    expect(text(el.renderRoot.querySelector('.rows')!)).to.contain('The window is 30 min short.');
  });

  it('leads back to where the number came from', async () => {
    const el = await shown(explainLedger(ledgers[0]!, night, rules, 0));
    setTimeout(() => el.renderRoot.querySelector<HTMLElement>('.links button')!.click());
    const event = await oneEvent<WhyLinkEvent>(el, 'possession-why-link');
    expect(event.place).to.deep.equal({ to: 'window', id: 'N1' });
  });

  it('refuses a row that the ledger does not have', () => {
    expect(() => explainLedger(ledgers[0]!, night, rules, 99)).to.throw(RangeError);
  });

  it('has no accessibility faults empty and told, light and dark', async () => {
    const verdict = fits.find((fit) => fit.fits)!;
    await inBothSchemes(async () => {
      for (const told of [
        null,
        explainLedger(ledgers[0]!, night, rules, 'usable'),
        explainFit(verdict, packages[0]!, night, activities),
      ]) {
        const el = await shown(told);
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});

import { expect, fixture, html } from '@open-wc/testing';
import '../../components/ledger/define.js';
import type { PossessionLedger } from '../../components/ledger/ledger.js';
import { text } from './support/look.js';
import { ledgers, springNight } from './support/samples.js';

const ledger = html`<possession-ledger
  .window=${springNight}
  .ledger=${ledgers[1]}
></possession-ledger>`;
const dates = async (el: PossessionLedger): Promise<string> => {
  await el.updateComplete;
  return text(el.renderRoot.querySelector('header p'));
};
const found = (root: ParentNode): PossessionLedger => root.querySelector('possession-ledger')!;

describe('the language of an element', () => {
  it('is English where the page says none', async () => {
    expect(await dates(await fixture(ledger))).to.equal('Sat 27 Mar 22:50 to Sun 28 Mar 09:00');
  });

  it('is that of the nearest lang, and follows it when it changes', async () => {
    const page = await fixture(html`<div lang="fr"><div lang="de-AT">${ledger}</div></div>`);
    const el = found(page);
    expect(await dates(el)).to.contain('Sa., 27. März');
    page.firstElementChild!.setAttribute('lang', 'en-US');
    await new Promise((done) => setTimeout(done));
    expect(await dates(el)).to.contain('Sat, Mar 27');
    page.firstElementChild!.removeAttribute('lang');
    await new Promise((done) => setTimeout(done));
    expect(await dates(el)).to.contain('sam. 27 mars');
    el.lang = 'de';
    await new Promise((done) => setTimeout(done));
    expect(await dates(el)).to.contain('Sa., 27. März');
  });

  it('is found through shadow roots, and is English where the tag is none', async () => {
    const host = await fixture<HTMLElement>(html`<div lang="de"></div>`);
    const inside = host.attachShadow({ mode: 'open' });
    inside.append(await fixture(ledger));
    expect(await dates(found(inside))).to.contain('27. März');
    host.lang = 'no such tag';
    await new Promise((done) => setTimeout(done));
    expect(await dates(found(inside))).to.contain('Sat 27 Mar');
  });

  it('is that of each element where a page has two', async () => {
    const page = await fixture(
      html`<div>
        <p lang="de">${ledger}</p>
        <p lang="en">${ledger}</p>
      </div>`,
    );
    const [one, other] = page.querySelectorAll('possession-ledger');
    expect(await dates(one!)).to.contain('27. März');
    expect(await dates(other!)).to.contain('27 Mar');
  });
});

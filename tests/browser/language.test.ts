import { expect, fixture, html } from '@open-wc/testing';
import '../../components/ledger/define.js';
import type { PossessionLedger } from '../../components/ledger/ledger.js';
import '../../components/ribbon/define.js';
import '../../components/sheet/define.js';
import '../../components/why/define.js';
import type { Explanation } from '../../components/why/explanation.js';
import { axeFaults } from './support/axe.js';
import { text, withText } from './support/look.js';
import { ledgers, planDocument, results, springNight, windows } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

const told: Explanation = {
  title: 'Usable time',
  figure: '7 h 10',
  sentence: 'What is left.',
  rows: [{ label: 'Booked', figure: '9 h 10' }],
  links: [],
};

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

describe('a German page', () => {
  const page = html`<div lang="de">
    <possession-ribbon .windows=${windows} .ledgers=${ledgers} by-week></possession-ribbon>
    ${ledger}<possession-why .explanation=${told}></possession-why>
  </div>`;

  it('is spoken to in German by the elements that can, and what stays English is marked so', async () => {
    const root = await fixture(page);
    const el = found(root);
    const ribbon = root.querySelector('possession-ribbon')!;
    const why = root.querySelector('possession-why')!;
    await waitUntil(() => text(el.renderRoot).includes('Gebucht'));
    await waitUntil(() => text(ribbon.renderRoot).includes('bestätigt'));
    await waitUntil(() => text(why.renderRoot).includes('Woraus sie besteht'));
    expect(await dates(el)).to.equal('Sa., 27. März 22:50 bis So., 28. März 09:00');
    expect(text(ribbon.renderRoot.querySelector('text.week'))).to.equal('ab 8. Feb.');
    el.asTable = true;
    await el.updateComplete;
    const why1 = el.renderRoot.querySelector('td .quiet [lang=en]');
    expect(text(why1)).to.equal('Take the line applies.');
    expect(why.renderRoot.querySelector('.sentence')!.getAttribute('lang')).to.equal('en');
    expect(await axeFaults(root)).to.deep.equal([]);
  });

  it('turns back to English with the page, words of its own kept', async () => {
    const root = await fixture<HTMLElement>(html`<div lang="de">${ledger}</div>`);
    const el = found(root);
    el.strings = { usable: 'Rest' };
    await waitUntil(() => text(el.renderRoot).includes('Gebucht'));
    expect(text(el.renderRoot)).to.contain('Rest');
    root.lang = 'en';
    await waitUntil(() => text(el.renderRoot).includes('Booked'));
    expect(text(el.renderRoot)).to.contain('Rest');
  });

  it('has a sheet that speaks German in its tools, its keys and its count of cells', async () => {
    const root = await fixture(
      html`<div lang="de">
        <possession-sheet
          label="Fenster"
          .table=${planDocument.tables.work}
          .faults=${results.faults}
        ></possession-sheet>
      </div>`,
    );
    const sheet = root.querySelector('possession-sheet')!;
    const said = (): string => text(sheet.renderRoot);
    await waitUntil(() => said().includes('Zeile anfügen'));
    const english = /Add row|Undo|rows|line |error|Keys|Filter(?!n)/.exec(said());
    expect(english?.[0]).to.equal(undefined);
    withText(sheet, 'button', 'Tasten').click();
    await waitUntil(() => said().includes('Strg+Pos1'));
    expect(await axeFaults(root)).to.deep.equal([]);
  });
});

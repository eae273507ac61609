import { expect, fixture, html } from '@open-wc/testing';
import '../../components/fit/define.js';
import '../../components/ledger/define.js';
import '../../components/ribbon/define.js';
import '../../components/sheet/define.js';
import type { PossessionLedger } from '../../components/ledger/ledger.js';
import { axeFaults } from './support/axe.js';
import { fits, ledgers, night, packages, planDocument, windows } from './support/samples.js';

const four = html`<possession-ribbon .windows=${windows} .ledgers=${ledgers}></possession-ribbon>
  <possession-ledger .window=${night} .ledger=${ledgers[0]}></possession-ledger>
  <possession-sheet label="Windows" .table=${planDocument.tables.windows}></possession-sheet>
  <possession-fit .packages=${packages} .windows=${windows} .fits=${fits}></possession-fit>`;

async function ledgerIn(style: string): Promise<PossessionLedger> {
  const page = await fixture(
    html`<div style=${style}>
      <possession-ledger .window=${night} .ledger=${ledgers[0]}></possession-ledger>
    </div>`,
  );
  const el = page.querySelector('possession-ledger')!;
  await el.updateComplete;
  return el;
}

const styleOf = (el: PossessionLedger, selector: string): CSSStyleDeclaration =>
  getComputedStyle(el.renderRoot.querySelector(selector)!);

describe('a page of somebody else', () => {
  it('gives its font to everything in an element', async () => {
    const el = await ledgerIn('font-family: Georgia, serif');
    for (const part of ['h2', 'button', '.figure', 'li'])
      expect(styleOf(el, part).fontFamily, part).to.equal('Georgia, serif');
  });

  it('may name another font, radius, size and density', async () => {
    const el = await ledgerIn(
      'font-family: Georgia; --possession-font: Courier; --possession-radius: 9px; --possession-text: 21px; --possession-control: 50px',
    );
    const button = styleOf(el, 'button');
    expect(button.fontFamily).to.equal('Courier');
    expect(button.fontSize).to.equal('21px');
    expect(button.minHeight).to.equal('50px');
    expect(styleOf(el, '.cautions').fontSize).to.equal('18px');
    expect(styleOf(el, 'button').borderTopLeftRadius).to.equal('9px');
  });

  it('has its colour scheme taken', async () => {
    const light = getComputedStyle(await ledgerIn('color-scheme: light'));
    const dark = getComputedStyle(await ledgerIn('color-scheme: dark'));
    expect(light.backgroundColor).to.equal('rgb(243, 241, 234)');
    expect(dark.backgroundColor).to.equal('rgb(20, 23, 27)');
  });

  for (const [name, style, dir] of [
    ['white', 'background: #fff; color: #000; color-scheme: light', 'ltr'],
    ['dark', 'background: #000; color: #fff; color-scheme: dark', 'ltr'],
    ['dark by its ground alone', 'background: #000; color: #fff', 'ltr'],
    ['right-to-left', 'background: #fff; color: #000; color-scheme: light', 'rtl'],
  ] as const)
    it(`that is ${name} leaves all text readable`, async () => {
      document.documentElement.dir = dir;
      const host = await fixture(
        html`<div style=${style}>
          <h1>Works</h1>
          ${four}
        </div>`,
      );
      const faults = await axeFaults(host);
      document.documentElement.removeAttribute('dir');
      expect(faults).to.deep.equal([]);
    });
});

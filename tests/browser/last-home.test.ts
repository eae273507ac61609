import { expect, fixture, html } from '@open-wc/testing';
import { keepLastHome } from '../../app/last-home.js';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';

const KEY = 'possession-fit home';
const shown = async (): Promise<PossessionDesk> => {
  const el = await fixture<PossessionDesk>(html`<possession-desk></possession-desk>`);
  keepLastHome(el);
  await el.updateComplete;
  return el;
};

describe('the place that opens first', () => {
  beforeEach(() => localStorage.removeItem(KEY));
  after(() => localStorage.removeItem(KEY));

  it('is the programme on a new device, then the place last looked at', async () => {
    const first = await shown();
    expect(first.view).to.equal('windows');
    first.show('handback');
    await first.updateComplete;
    await Promise.resolve();
    expect((await shown()).view).to.equal('handback');
  });

  it('opens a place as it is first looked at, and never with files or tables', async () => {
    const first = await shown();
    first.show('site');
    await first.updateComplete;
    first.show('files');
    await first.updateComplete;
    expect((await shown()).view).to.equal('urgent');
  });

  it('opens the programme where what is kept makes no sense', async () => {
    localStorage.setItem(KEY, 'nowhere');
    expect((await shown()).view).to.equal('windows');
  });
});

import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/sheet/define.js';
import type { CellSelectEvent } from '../../components/sheet/cell-select-event.js';
import type { PossessionSheet } from '../../components/sheet/sheet.js';
import type { Fault, TableText } from '../../src/model/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { frame, press } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

const table = (rows: number): TableText => ({
  file: 'windows.csv',
  columns: ['window', 'title', 'start', 'hut'],
  rows: Array.from({ length: rows }, (_, index) => [
    `N${index}`,
    `Night ${index}`,
    '2027-01-01 23:00',
    'green',
  ]),
});
const fault: Fault = {
  code: 'time-does-not-exist',
  severity: 'error',
  file: 'windows.csv',
  line: 4,
  row: 2,
  column: 'start',
  sentence: { key: 'no-such-time', given: { text: '25:00' } },
};

async function shown(rows: number, faults: readonly Fault[] = []): Promise<PossessionSheet> {
  const el = await fixture<PossessionSheet>(
    html`<possession-sheet
      .table=${table(rows)}
      .faults=${faults}
      .unread=${['hut']}
    ></possession-sheet>`,
  );
  el.style.setProperty('height', '300px');
  await frame();
  await frame();
  await el.updateComplete;
  return el;
}
const grid = (el: PossessionSheet): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>('[role=grid]')!;
const current = (el: PossessionSheet): string =>
  grid(el).getAttribute('aria-activedescendant') ?? '';
const body = (el: PossessionSheet): NodeListOf<HTMLElement> =>
  el.renderRoot.querySelectorAll('.body > [role=row]');

describe('possession-sheet', () => {
  it('says how long the whole table is and draws only what is in sight', async () => {
    const el = await shown(50_000);
    expect(grid(el).getAttribute('aria-rowcount')).to.equal('50001');
    expect(grid(el).getAttribute('aria-colcount')).to.equal('4');
    expect(body(el).length).to.be.lessThan(40);
  });

  it('shows the last of 50,000 rows after Ctrl+End', async () => {
    const el = await shown(50_000);
    press(grid(el), 'End', { ctrlKey: true });
    await el.updateComplete;
    expect(current(el)).to.equal('cell-49999-3');
    const cell = el.renderRoot.querySelector('#cell-49999-3')!.getBoundingClientRect();
    const frame = grid(el).getBoundingClientRect();
    expect(cell.bottom).to.be.at.most(frame.bottom + 1);
    expect(cell.top).to.be.at.least(frame.top);
  });

  for (const [key, more, to] of [
    ['ArrowDown', {}, 'cell-1-0'],
    ['ArrowRight', {}, 'cell-0-1'],
    ['ArrowUp', {}, 'cell-0-0'],
    ['ArrowLeft', {}, 'cell-0-0'],
    ['End', {}, 'cell-0-3'],
    ['Home', {}, 'cell-0-0'],
    ['End', { ctrlKey: true }, 'cell-99-3'],
  ] as const)
    it(`${'ctrlKey' in more ? 'Ctrl+' : ''}${key} goes to ${to}`, async () => {
      const el = await shown(100);
      press(grid(el), key, more);
      await el.updateComplete;
      expect(current(el)).to.equal(to);
    });

  it('PageDown goes on by the rows in sight but one', async () => {
    const el = await shown(100);
    press(grid(el), 'PageDown');
    await el.updateComplete;
    const page = Math.floor((grid(el).clientHeight - 34) / 30) - 1;
    expect(current(el)).to.equal(`cell-${page}-0`);
  });

  it('points at no cell that is not drawn', async () => {
    const el = await shown(5_000);
    grid(el).scrollTop = 60_000;
    grid(el).dispatchEvent(new Event('scroll'));
    await frame();
    await frame();
    await el.updateComplete;
    expect(current(el)).to.equal('');
    press(grid(el), 'ArrowDown');
    await el.updateComplete;
    expect(current(el)).to.equal('cell-1-0');
  });

  it('tells which cell is moved to', async () => {
    const el = await shown(5);
    setTimeout(() => press(grid(el), 'ArrowRight'));
    const event = await oneEvent<CellSelectEvent>(el, 'possession-cell-select');
    expect([event.row, event.column, event.value]).to.deep.equal([0, 'title', 'Night 0']);
  });

  it('marks a faulty cell in words and says what to mend', async () => {
    const el = await shown(5, [fault]);
    const cell = el.renderRoot.querySelector<HTMLElement>('#cell-2-2')!;
    expect(cell.getAttribute('aria-invalid')).to.equal('true');
    expect(cell.textContent).to.contain('error:');
    cell.click();
    await el.updateComplete;
    await waitUntil(() =>
      el.renderRoot.querySelector('.said')!.textContent.includes('Write a time of day'),
    );
  });

  it('goes to the next fault', async () => {
    const el = await shown(5, [fault]);
    el.renderRoot.querySelector<HTMLElement>('.status button')!.click();
    await el.updateComplete;
    expect(current(el)).to.equal('cell-2-2');
  });

  it('ignores the faults of another file', async () => {
    const el = await shown(5, [{ ...fault, file: 'work.csv' }]);
    expect(el.renderRoot.querySelector('.fault')).to.equal(null);
  });

  it('keeps a column it cannot use and says so', async () => {
    const el = await shown(3);
    expect(el.renderRoot.querySelectorAll('[role=columnheader]')[3]!.textContent).to.contain(
      'kept, not read',
    );
    expect(el.renderRoot.querySelector('#cell-1-3')!.textContent.trim()).to.equal('green');
  });

  it('shows untrusted text as text', async () => {
    const el = await shown(1);
    el.table = { ...table(1), rows: [['<img src=x onerror=alert(1)>', '', '', '']] };
    await el.updateComplete;
    expect(el.renderRoot.querySelector('img')).to.equal(null);
    expect(el.renderRoot.querySelector('#cell-0-0')!.textContent).to.contain('<img');
  });

  it('has no accessibility faults empty, filled and faulty, light and dark', async () => {
    const el = await shown(30, [fault]);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    el.table = { file: 'none.csv', columns: [], rows: [] };
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
  });
});

import { expect, fixture, html } from '@open-wc/testing';
import '../../components/sheet/define.js';
import type { PossessionSheet } from '../../components/sheet/sheet.js';
import { PRINTED_ROWS } from '../../components/sheet/paper/sheet-print.js';
import type { Fault } from '../../src/model/index.js';
import { frame, press } from './support/samples.js';

async function shown(rows: number, faults: readonly Fault[] = []): Promise<PossessionSheet> {
  const el = await fixture<PossessionSheet>(html`<possession-sheet></possession-sheet>`);
  el.table = {
    file: 'work.csv',
    columns: ['id', 'title', 'minutes'],
    rows: Array.from({ length: rows }, (_, at) => [`W${at}`, `<b>Work ${at}</b>`, `${at}`]),
  };
  el.faults = faults;
  el.style.setProperty('height', '300px');
  await frame();
  await el.updateComplete;
  return el;
}
const print = (when: 'beforeprint' | 'afterprint'): boolean => dispatchEvent(new Event(when));
const printed = (el: PossessionSheet): HTMLElement | null =>
  el.renderRoot.querySelector('.printed');
const cells = (el: PossessionSheet, row: number): string[] =>
  [...printed(el)!.querySelectorAll('tbody tr')[row]!.children].map((child) => child.textContent);

describe('possession-sheet on paper', () => {
  it('holds every row, also those not in sight, and is gone afterwards', async () => {
    const el = await shown(300);
    print('beforeprint');
    expect(printed(el)!.querySelectorAll('tbody tr').length).to.equal(300);
    expect(cells(el, 299)).to.deep.equal(['301', 'W299', '<b>Work 299</b>', '299']);
    expect(printed(el)!.querySelector('p')!.textContent).to.equal('All 300 rows.');
    expect(printed(el)!.nextElementSibling).not.to.equal(null);
    expect(getComputedStyle(printed(el)!).display).to.equal('none');
    print('afterprint');
    expect(printed(el)).to.equal(null);
  });

  it('puts a table too wide for a sheet on several, each with the first column again', async () => {
    const el = await shown(0);
    const columns = ['id', ...Array.from({ length: 30 }, (_, at) => `measured value ${at}`)];
    el.table = { file: 'wide.csv', columns, rows: [columns.map((_, at) => `cell ${at}`)] };
    await el.updateComplete;
    print('beforeprint');
    const papers = [...printed(el)!.querySelectorAll('table')];
    expect(papers.length).to.be.greaterThan(1);
    const heads = papers.map((paper) =>
      [...paper.querySelectorAll('thead th')].map((head) => head.textContent),
    );
    expect(heads.every(([line, first]) => line === 'line' && first === 'id')).to.equal(true);
    expect(heads.flatMap((head) => head.slice(2))).to.deep.equal(columns.slice(1));
    expect(papers[0]!.caption!.textContent).to.contain('wide.csv, measured value 0 to');
    print('afterprint');
  });

  it('says how many rows are left out beyond what paper is for', async () => {
    const el = await shown(PRINTED_ROWS + 1_234);
    print('beforeprint');
    expect(printed(el)!.querySelectorAll('tbody tr').length).to.equal(PRINTED_ROWS);
    const note = printed(el)!.querySelector('p')!.textContent;
    expect(note).to.contain('2,000 of 3,234 rows.');
    expect(note).to.contain('1,234 rows left out');
    print('afterprint');
  });

  it('prints what is shown, names what is not, and marks a fault in words', async () => {
    const fault: Fault = {
      code: 'time-does-not-exist',
      severity: 'error',
      file: 'work.csv',
      line: 4,
      row: 2,
      column: 'minutes',
      sentence: { key: 'no-such-time', given: { text: '25:00' } },
    };
    const el = await shown(30, [fault]);
    const grid = el.renderRoot.querySelector('[role=grid]')!;
    el.renderRoot.querySelector<HTMLElement>('.tools .filter')!.click();
    await el.updateComplete;
    el.renderRoot.querySelector<HTMLInputElement>('.filters input.text')!.value = 'W2';
    el.renderRoot.querySelector<HTMLFormElement>('.filters')!.requestSubmit();
    await el.updateComplete;
    press(grid, 'ArrowRight');
    press(grid, 'F10', { shiftKey: true });
    await el.updateComplete;
    await frame();
    el.renderRoot.querySelector<HTMLElement>('[data-act=hide]')!.click();
    await el.updateComplete;
    print('beforeprint');
    expect(printed(el)!.querySelector('p')!.textContent).to.equal(
      '11 of 30 rows. 19 rows filtered out. 1 column hidden.',
    );
    expect(cells(el, 0)).to.deep.equal(['4', 'W2', '2 [error]']);
    print('afterprint');
  });
});

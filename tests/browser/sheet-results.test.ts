import { expect, fixture, html } from '@open-wc/testing';
import '../../components/sheet/define.js';
import type { ResultColumn } from '../../components/sheet/result-column.js';
import type { PossessionSheet } from '../../components/sheet/sheet.js';
import { tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { all, find, sent, text } from './support/look.js';
import type { ResultAskEvent } from '../../components/sheet/result-ask-event.js';

const table = tableOf('work.csv', 'name,minutes,note\nA,90,first\nB,45,second\nC,120,third');

const columns: readonly ResultColumn[] = [
  {
    id: 'double',
    heading: 'double',
    figures: true,
    value: (_, [, minutes = '']) => ({
      text: `${Number(minutes) * 2} min`,
      sort: Number(minutes) * 2,
    }),
  },
  {
    id: 'verdict',
    heading: 'verdict',
    value: (_, [, minutes = '']) =>
      Number(minutes) > 100 ? { text: 'too long', tone: 'harm' } : 'fits',
  },
];

async function shown(results = columns, given = table): Promise<PossessionSheet> {
  const el = await fixture<PossessionSheet>(
    html`<possession-sheet .table=${given} .resultColumns=${results}></possession-sheet>`,
  );
  el.style.setProperty('height', '400px');
  await el.updateComplete;
  return el;
}
const row = (el: PossessionSheet, place: number): string[] =>
  all(el, `.body [data-row="${place}"]`)
    .sort((a, b) => Number(a.dataset['column']) - Number(b.dataset['column']))
    .map((element) => text(element));
const grid = (el: PossessionSheet): HTMLElement => find(el, '[role=grid]');
const press = (el: PossessionSheet, key: string, init: KeyboardEventInit = {}): void => {
  grid(el).dispatchEvent(
    new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...init }),
  );
};
const clipboard = (type: string, data = ''): ClipboardEvent => {
  const transfer = new DataTransfer();
  if (data !== '') transfer.setData('text/plain', data);
  return new ClipboardEvent(type, { clipboardData: transfer, bubbles: true, cancelable: true });
};

describe('results in the sheet', () => {
  it('stand beside what tells rows apart, and stay there while cells are typed', async () => {
    const work = tableOf('work.csv', 'package,name,minutes\nP,A,90\nP,B,45\nP,C,120');
    const el = await shown(columns, work);
    expect(row(el, 0)).to.deep.equal(['P', 'A', 'NaN min', 'fits', '90']);
    el.table = { ...work, rows: [['P', 'B', '90'], ...work.rows.slice(1)] };
    await el.updateComplete;
    expect(row(el, 0)).to.deep.equal(['P', 'B', 'NaN min', 'fits', '90']);
    el.table = tableOf('other.csv', 'package,minutes\nP,90\nP,90');
    await el.updateComplete;
    expect(row(el, 0)).to.deep.equal(['P', '180 min', 'fits', '90']);
  });

  it('stand beside the first column, marked as worked out', async () => {
    const el = await shown();
    expect(row(el, 0)).to.deep.equal(['A', '180 min', 'fits', '90', 'first']);
    expect(find(el, '[data-head="1"]').textContent).to.contain('worked out');
    expect(find(el, '#cell-0-3').getAttribute('aria-readonly')).to.equal('true');
    expect(getComputedStyle(find(el, '#cell-0-3')).fontStyle).to.equal('italic');
  });

  it('are sorted by what they mean, not by their text', async () => {
    const el = await shown();
    el.goTo(0);
    press(el, 'ArrowRight');
    find(el, '.more').click();
    await el.updateComplete;
    find(el, '[data-act=sortUp]').click();
    await el.updateComplete;
    expect([0, 1, 2].map((place) => row(el, place)[1])).to.deep.equal([
      '90 min',
      '180 min',
      '240 min',
    ]);
    expect(el.shownTable.rows.map(([name]) => name)).to.deep.equal(['B', 'A', 'C']);
  });

  it('can be filtered by', async () => {
    const el = await shown();
    find(el, '.filter').click();
    await el.updateComplete;
    const choice = find(el, '.filters select') as HTMLSelectElement;
    choice.value = '4';
    choice.dispatchEvent(new Event('change'));
    await el.updateComplete;
    (find(el, '.filters input.text') as HTMLInputElement).value = 'too long';
    (find(el, '.filters') as HTMLFormElement).requestSubmit();
    await el.updateComplete;
    expect(el.shownTable.rows).to.deep.equal([['C', '240 min', 'too long', '120', 'third']]);
  });

  it('leave with the rows by copy, and are never written back by paste', async () => {
    const el = await shown();
    press(el, 'a', { ctrlKey: true });
    const copy = clipboard('copy');
    grid(el).dispatchEvent(copy);
    const copied = copy.clipboardData!.getData('text/plain');
    expect(copied.split('\r\n')[0]).to.equal('A\t180 min\tfits\t90\tfirst');
    el.goTo(2);
    grid(el).dispatchEvent(clipboard('paste', copied));
    await el.updateComplete;
    expect(el.table.columns).to.deep.equal(table.columns);
    expect(el.table.rows.slice(2)).to.deep.equal(table.rows);
  });

  it('give way to cells pasted over them from elsewhere: none is lost', async () => {
    const el = await shown();
    el.goTo(0);
    grid(el).dispatchEvent(clipboard('paste', 'Z\t10\tnew'));
    await el.updateComplete;
    expect(el.table.rows[0]).to.deep.equal(['Z', '10', 'new']);
  });

  it('cannot be typed in, cleared or filled', async () => {
    const el = await shown();
    el.goTo(0);
    press(el, 'ArrowRight');
    press(el, 'x');
    press(el, 'Delete');
    press(el, 'd', { ctrlKey: true });
    await el.updateComplete;
    expect(el.table).to.equal(table);
    expect(find(el, '.typing')).to.equal(null);
  });

  it('say where they come from when a person goes to one', async () => {
    const el = await shown();
    el.goTo(1);
    const asked = await sent<ResultAskEvent>(el, 'possession-result-ask', () =>
      press(el, 'ArrowRight'),
    );
    expect([asked.row, asked.column]).to.deep.equal([1, 'double']);
  });

  it('are chosen and put in order by the person', async () => {
    const el = await shown();
    find(el, '.choose').click();
    await el.updateComplete;
    all(el, '.results .plain')
      .find((element) => element.getAttribute('aria-label')?.startsWith('double: further back'))!
      .click();
    await el.updateComplete;
    expect(el.shownTable.columns).to.deep.equal(['name', 'verdict', 'double', 'minutes', 'note']);
    (find(el, '.results input') as HTMLInputElement).click();
    await el.updateComplete;
    expect(el.shownTable.columns).to.deep.equal(['name', 'double', 'minutes', 'note']);
  });

  it('follow the rows as they are typed, and stay out of the table that is told', async () => {
    const el = await shown();
    el.goTo(0, 'minutes');
    press(el, 'F2');
    await el.updateComplete;
    const field = find(el, '.typing') as HTMLTextAreaElement;
    field.value = '30';
    field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
    await el.updateComplete;
    expect(el.table.rows[0]).to.deep.equal(['A', '30', 'first']);
    expect(row(el, 0)[1]).to.equal('60 min');
  });

  it('are worked out for the rows in sight alone, of fifty thousand', async () => {
    let calls = 0;
    const counted: ResultColumn[] = [
      { id: 'n', heading: 'n', value: (at) => ((calls += 1), String(at)) },
    ];
    const rows = Array.from({ length: 50_000 }, (_, at) => [`R${at}`, '5', '']);
    const el = await shown(counted, { ...table, rows });
    const first = calls;
    expect(first).to.be.below(400);
    const scroller = find(el, '.scroller');
    scroller.scrollTop = 600_000;
    scroller.dispatchEvent(new Event('scroll'));
    expect(calls - first).to.be.below(200);
    expect(all(el, '.body .row').length).to.be.below(60);
    const cells = all(el, '.body [data-column="1"]');
    expect(cells.length).to.be.above(3);
    for (const cell of cells)
      expect(`R${text(cell)}`).to.equal(text(cell.parentElement!.querySelector('.first')));
  });

  it('are printed with the rows', async () => {
    const el = await shown();
    dispatchEvent(new Event('beforeprint'));
    expect(text(find(el, '.printed'))).to.contain('240 min');
    dispatchEvent(new Event('afterprint'));
  });

  it('break no rule of accessibility, light and dark, with the choice open', async () => {
    const el = await shown();
    find(el, '.choose').click();
    await inBothSchemes(async () => {
      await el.updateComplete;
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

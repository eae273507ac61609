import { expect, fixture, html } from '@open-wc/testing';
import '../../components/sheet/define.js';
import { keyIds, keyTable } from '../../components/sheet/grid/key-table.js';
import type { PossessionSheet } from '../../components/sheet/sheet.js';
import type { TableText } from '../../src/model/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { frame, press } from './support/samples.js';

const sample = (): TableText => ({
  file: 'work.csv',
  columns: ['id', 'title', 'minutes'],
  rows: Array.from({ length: 40 }, (_, at) => [`W${at}`, `Work ${at}`, `${at * 10}`]),
});

async function shown(over: Partial<PossessionSheet> = {}): Promise<PossessionSheet> {
  const el = await fixture<PossessionSheet>(
    html`<possession-sheet .table=${sample()}></possession-sheet>`,
  );
  Object.assign(el, over);
  el.style.setProperty('height', '320px');
  await frame();
  await el.updateComplete;
  grid(el).focus();
  return el;
}
const all = <E extends HTMLElement>(el: PossessionSheet, what: string): E[] => [
  ...el.renderRoot.querySelectorAll<E>(what),
];
const grid = (el: PossessionSheet): HTMLElement => all(el, '[role=grid]')[0]!;
const chosen = (el: PossessionSheet): number => all(el, '.body [aria-selected=true]').length;
const at = (el: PossessionSheet): string => grid(el).getAttribute('aria-activedescendant') ?? '';
const field = (el: PossessionSheet): HTMLTextAreaElement | undefined =>
  all<HTMLTextAreaElement>(el, 'textarea.typing')[0];

/** A chord of the key table, pressed. */
async function hit(el: PossessionSheet, chord: string, on: Element = grid(el)): Promise<void> {
  const parts = chord.split('+');
  const key = parts.pop()!.replace('Space', ' ');
  press(on, key, {
    ctrlKey: parts.includes('Ctrl'),
    shiftKey: parts.includes('Shift'),
    altKey: parts.includes('Alt'),
  });
  await el.updateComplete;
}

function clip(el: PossessionSheet, type: 'copy' | 'cut' | 'paste', data: DataTransfer): void {
  const more = { clipboardData: data, bubbles: true, cancelable: true, composed: true };
  grid(el).dispatchEvent(new ClipboardEvent(type, more));
}
function carrying(text: string, kind = 'text/plain'): DataTransfer {
  const data = new DataTransfer();
  data.setData(kind, text);
  return data;
}

describe('possession-sheet by keys', () => {
  it('lists every key of its table on ?', async () => {
    const el = await shown();
    await hit(el, '?');
    await frame();
    const listed = all(el, '.help dl > div').length;
    expect(listed).to.equal(keyIds.length);
    expect(keyTable.help.keys).to.deep.equal(['?']);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });

  it('extends, narrows and widens a block', async () => {
    const el = await shown();
    await hit(el, 'Shift+ArrowDown');
    await hit(el, 'Shift+ArrowRight');
    expect(chosen(el)).to.equal(4);
    await hit(el, 'Shift+Space');
    expect(chosen(el)).to.equal(6);
    await hit(el, 'Escape');
    expect(chosen(el)).to.equal(1);
    await hit(el, 'Ctrl+Space');
    expect(chosen(el)).to.equal(all(el, '.body > .row').length);
    await hit(el, 'Ctrl+A');
    expect(chosen(el)).to.equal(all(el, '.body > .row').length * 3);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });

  for (const [key, to] of [
    ['Enter', 'cell-1-0'],
    ['Shift+Enter', 'cell-0-0'],
    ['Tab', 'cell-0-1'],
    ['Shift+Tab', 'cell-0-0'],
  ] as const)
    it(`keeps what is typed on ${key} and goes to ${to}`, async () => {
      const el = await shown();
      await hit(el, 'F2');
      field(el)!.value = 'typed';
      await hit(el, key, field(el));
      expect(el.table.rows[0]![0]).to.equal('typed');
      expect(at(el)).to.equal(to);
      expect(field(el)).to.equal(undefined);
    });

  it('leaves the cell as it was on Escape, replaces on a sign, keeps on losing the focus', async () => {
    const el = await shown();
    await hit(el, 'Enter');
    expect(field(el)!.value).to.equal('W0');
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    field(el)!.value = 'no';
    await hit(el, 'Escape', field(el));
    expect(el.table.rows[0]![0]).to.equal('W0');
    await hit(el, 'x');
    expect(field(el)!.value).to.equal('');
    field(el)!.value = 'x';
    field(el)!.dispatchEvent(new FocusEvent('blur'));
    expect(el.table.rows[0]![0]).to.equal('x');
  });

  it('clears, fills, takes back and does again', async () => {
    const el = await shown();
    const before = el.table;
    const labels: string[] = [];
    el.addEventListener('possession-table-change', (event) => labels.push(event.label));
    await hit(el, 'Shift+ArrowDown');
    await hit(el, 'Ctrl+D');
    expect(el.table.rows[1]![0]).to.equal('W0');
    await hit(el, 'Delete');
    expect(el.table.rows[0]![0]).to.equal('');
    await hit(el, 'Ctrl+Z');
    await hit(el, 'Ctrl+Z');
    expect(el.table).to.deep.equal(before);
    await hit(el, 'Ctrl+Y');
    await hit(el, 'Ctrl+Shift+Z');
    expect(el.table.rows[1]![0]).to.equal('');
    expect(labels.slice(0, 2)).to.deep.equal(['1 cell filled', '2 cells cleared']);
  });

  it('leaves undo to a host that cancels the event', async () => {
    const el = await shown();
    await hit(el, 'Delete');
    const cleared = el.table;
    el.addEventListener('possession-undo', (event) => event.preventDefault());
    await hit(el, 'Ctrl+Z');
    expect(el.table).to.equal(cleared);
  });

  it('copies exactly, pastes beyond the end and says so', async () => {
    const el = await shown();
    const data = new DataTransfer();
    await hit(el, 'Shift+ArrowRight');
    clip(el, 'copy', data);
    expect(data.getData('text/plain')).to.equal('W0\tWork 0');
    await hit(el, 'Ctrl+End');
    await hit(el, 'Home');
    clip(el, 'paste', carrying('007\t"a\nb"\r\n008\tc\r\n'));
    await el.updateComplete;
    expect(el.table.rows.slice(39)).to.deep.equal([
      ['007', 'a\nb', '390'],
      ['008', 'c'],
    ]);
    expect(all(el, '.told')[0]!.textContent).to.contain('4 cells pasted. 1 row added');
    await hit(el, 'Ctrl+Z');
    expect(el.table.rows.length).to.equal(40);
  });

  it('reads a pasted table as text when there is nothing plain, and runs none of it', async () => {
    const el = await shown();
    clip(
      el,
      'paste',
      carrying('<table><tr><td>01<td><img src=x onerror=alert(1)>b</table>', 'text/html'),
    );
    expect(el.table.rows[0]!.slice(0, 2)).to.deep.equal(['01', 'b']);
  });

  it('changes nothing when it is to read only', async () => {
    const el = await shown({ readonly: true });
    const before = el.table;
    for (const chord of ['Delete', 'Ctrl+D', 'Enter', 'x', 'Ctrl+Z']) await hit(el, chord);
    clip(el, 'paste', carrying('a'));
    expect(el.table).to.equal(before);
    expect(field(el)).to.equal(undefined);
    expect(await axeFaults(el)).to.deep.equal([]);
  });

  it('finds, filters and edits the row of the file that is shown', async () => {
    const el = await shown();
    await hit(el, 'Ctrl+F');
    await frame();
    const wanted = all<HTMLInputElement>(el, '.finder input')[0]!;
    wanted.value = 'work 12';
    wanted.dispatchEvent(new Event('input'));
    await hit(el, 'Enter', wanted);
    expect(at(el)).to.equal('cell-12-1');
    all(el, '.tools .filter')[0]!.click();
    await el.updateComplete;
    all<HTMLInputElement>(el, '.filters input.text')[0]!.value = 'work 3';
    all<HTMLFormElement>(el, '.filters')[0]!.requestSubmit();
    await el.updateComplete;
    expect(grid(el).getAttribute('aria-rowcount')).to.equal('12');
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    await hit(el, 'Ctrl+End');
    await hit(el, 'Delete');
    expect(el.table.rows[39]![2]).to.equal('');
    expect(el.table.rows[11]![2]).to.equal('110');
  });

  it('opens its menu by key and inserts a row from it', async () => {
    const el = await shown();
    await hit(el, 'Shift+F10');
    await frame();
    expect(await axeFaults(el)).to.deep.equal([]);
    all(el, '[data-act=rowAbove]')[0]!.click();
    await el.updateComplete;
    expect(el.table.rows[0]).to.deep.equal(['', '', '']);
    expect(el.table.rows.length).to.equal(41);
  });
});

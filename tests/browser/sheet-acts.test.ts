import { expect, fixture, html } from '@open-wc/testing';
import '../../components/sheet/define.js';
import type { PossessionSheet } from '../../components/sheet/sheet.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { frame, press } from './support/samples.js';

async function shown(over: Partial<PossessionSheet> = {}): Promise<PossessionSheet> {
  const el = await fixture<PossessionSheet>(html`<possession-sheet></possession-sheet>`);
  el.table = {
    file: 'work.csv',
    columns: ['id', 'title', 'minutes'],
    rows: [
      ['W0', 'Deck lift', '30'],
      ['W1', 'Ballast drop', '10'],
      ['W2', 'Wire run', '20'],
      ['W3', 'Tamping', '5'],
    ],
  };
  Object.assign(el, over);
  el.style.setProperty('height', '360px');
  await frame();
  await el.updateComplete;
  grid(el).focus();
  return el;
}
const one = <E extends HTMLElement>(el: PossessionSheet, what: string): E =>
  el.renderRoot.querySelector<E>(what)!;
const grid = (el: PossessionSheet): HTMLElement => one(el, '[role=grid]');
const field = (el: PossessionSheet): HTMLTextAreaElement | HTMLInputElement | null =>
  el.renderRoot.querySelector('.typing');
const headings = (el: PossessionSheet): HTMLElement[] => [
  ...el.renderRoot.querySelectorAll<HTMLElement>('[role=columnheader]'),
];
const told = (el: PossessionSheet): string => one(el, '.told').textContent;

/** Runs an act from the menu of the cell with the focus. */
async function act(el: PossessionSheet, name: string): Promise<void> {
  press(grid(el), 'F10', { shiftKey: true });
  await el.updateComplete;
  await frame();
  one(el, `[data-act=${name}]`).click();
  await el.updateComplete;
  await frame();
}

/** A pointer event at the middle of an element, moved by some pixels; the mouse's id may be captured at any time. */
function point(on: Element, type: string, by: { x?: number; y?: number } = {}, kind = 'mouse') {
  const box = on.getBoundingClientRect();
  on.dispatchEvent(
    new PointerEvent(type, {
      pointerId: 1,
      pointerType: kind,
      button: 0,
      clientX: box.left + box.width / 2 + (by.x ?? 0),
      clientY: box.top + box.height / 2 + (by.y ?? 0),
      bubbles: true,
      cancelable: true,
      composed: true,
    }),
  );
}
function tap(on: Element): void {
  for (const type of ['pointerdown', 'pointerup', 'click']) point(on, type, {}, 'touch');
}

describe('possession-sheet by menu and pointer', () => {
  it('sorts what is shown, not the file, and types into the row that is shown', async () => {
    const el = await shown();
    const before = el.table.rows;
    el.goTo(0, 'minutes');
    await el.updateComplete;
    await act(el, 'sortUp');
    expect(el.table.rows).to.equal(before);
    expect(headings(el)[2]!.getAttribute('aria-sort')).to.equal('ascending');
    const top = [...el.renderRoot.querySelectorAll<HTMLElement>('.body > .row')]
      .sort((a, b) => Number(a.ariaRowIndex) - Number(b.ariaRowIndex))
      .map((row) => row.querySelector('.first')!.textContent);
    expect(top).to.deep.equal(['W3', 'W1', 'W2', 'W0']);
    press(grid(el), 'Home', { ctrlKey: true });
    press(grid(el), 'F2');
    await el.updateComplete;
    field(el)!.value = 'least';
    press(field(el)!, 'Enter');
    expect(el.table.rows.map((row) => row[0])).to.deep.equal(['W0', 'W1', 'W2', 'least']);
  });

  it('hides a column and keeps what it holds; shows it again', async () => {
    const el = await shown();
    const before = el.table;
    el.goTo(0, 'title');
    await el.updateComplete;
    await act(el, 'hide');
    expect(headings(el).map((head) => head.getAttribute('aria-colindex'))).to.deep.equal([
      '1',
      '3',
    ]);
    expect(el.table).to.equal(before);
    await act(el, 'showColumns');
    expect(headings(el).length).to.equal(3);
  });

  it('makes a column wider by its edge', async () => {
    const el = await shown();
    const width = (): number => headings(el)[0]!.getBoundingClientRect().width;
    const before = width();
    const edge = headings(el)[0]!.querySelector('.sizer')!;
    point(edge, 'pointerdown');
    point(edge, 'pointermove', { x: 40 });
    point(edge, 'pointerup', { x: 40 });
    await el.updateComplete;
    expect(width()).to.equal(before + 40);
    point(edge, 'pointermove', { x: 300 });
    await el.updateComplete;
    expect(width()).to.equal(before + 40);
  });

  it('gives a heading another name, refuses one that is taken', async () => {
    const el = await shown();
    for (const [typed, kept] of [
      ['Title', 'id'],
      ['', 'id'],
      ['work', 'work'],
    ] as const) {
      await act(el, 'rename');
      const name = one<HTMLInputElement>(el, '.rename');
      name.value = typed;
      press(name, 'Enter');
      await el.updateComplete;
      expect(el.table.columns[0]).to.equal(kept);
      expect(told(el)).not.to.equal('');
    }
    expect(el.table.rows[0]).to.deep.equal(['W0', 'Deck lift', '30']);
  });

  it('leaves the focus where an act chosen from the menu puts it', async () => {
    const el = await shown();
    await act(el, 'edit');
    expect(field(el)!.value).to.equal('W0');
    expect(el.shadowRoot!.activeElement).to.equal(field(el));
    press(field(el)!, 'Escape');
    await act(el, 'filter');
    expect(el.shadowRoot!.activeElement).to.equal(one(el, '.filters input.text'));
  });

  it('offers no choices over a cell of several lines, and keeps its lines', async () => {
    const el = await shown({ choices: { id: ['W9'] } });
    el.table = { ...el.table, rows: [['a\nb', '', '']] };
    await el.updateComplete;
    press(grid(el), 'F2');
    await el.updateComplete;
    expect(el.renderRoot.querySelector('[role=listbox]')).to.equal(null);
    press(field(el)!, 'Enter');
    expect(el.table.rows[0]![0]).to.equal('a\nb');
  });

  it('offers the choices of a heading, narrowed by what is typed', async () => {
    const el = await shown({ choices: { title: ['Tamping', 'Wire run', 'Wire joint'] } });
    el.goTo(0, 'title');
    press(grid(el), 'F2');
    await el.updateComplete;
    const offered = (): string[] =>
      [...el.renderRoot.querySelectorAll('[role=option]')].map((choice) => choice.textContent);
    expect(offered()).to.deep.equal(['Tamping', 'Wire run', 'Wire joint']);
    field(el)!.value = 'wire';
    field(el)!.dispatchEvent(new Event('input'));
    expect(offered()).to.deep.equal(['Wire run', 'Wire joint']);
    press(field(el)!, 'ArrowDown');
    press(field(el)!, 'ArrowDown');
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    press(field(el)!, 'Enter');
    expect(el.table.rows[0]![1]).to.equal('Wire joint');
  });

  it('repeats a cell over those its corner is dragged to', async () => {
    const el = await shown();
    el.goTo(0, 'title');
    await el.updateComplete;
    const grip = one(el, '.grip');
    point(grip, 'pointerdown');
    point(one(el, '#cell-2-1'), 'pointermove');
    point(one(el, '#cell-2-1'), 'pointerup');
    await el.updateComplete;
    expect(el.table.rows.map((row) => row[1])).to.deep.equal([
      'Deck lift',
      'Deck lift',
      'Deck lift',
      'Tamping',
    ]);
    press(grid(el), 'z', { ctrlKey: true });
    expect(el.table.rows[1]![1]).to.equal('Ballast drop');
  });

  it('goes to a cell on a tap and types in it on the next', async () => {
    const el = await shown();
    tap(one(el, '#cell-1-1'));
    await el.updateComplete;
    expect(grid(el).getAttribute('aria-activedescendant')).to.equal('cell-1-1');
    expect(field(el)).to.equal(null);
    tap(one(el, '#cell-1-1'));
    await el.updateComplete;
    expect(field(el)!.value).to.equal('Ballast drop');
  });

  it('chooses a block by two taps', async () => {
    const el = await shown();
    tap(one(el, '#cell-0-0'));
    await act(el, 'range');
    tap(one(el, '#cell-2-1'));
    await el.updateComplete;
    expect(el.renderRoot.querySelectorAll('.body [aria-selected=true]').length).to.equal(6);
  });

  it('starts from nothing with a column, its heading and a row to type in', async () => {
    const empty = await fixture<PossessionSheet>(html`<possession-sheet></possession-sheet>`);
    one(empty, '.none button').click();
    await empty.updateComplete;
    await frame();
    expect(empty.table).to.deep.equal({ ...empty.table, columns: ['new column'], rows: [['']] });
    grid(empty).focus();
    press(grid(empty), 'Enter');
    await empty.updateComplete;
    field(empty)!.value = 'first';
    press(field(empty)!, 'Enter');
    expect(empty.table.rows).to.deep.equal([['first']]);
  });

  it('has no accessibility faults with its menu open, nor to read only', async () => {
    const el = await shown();
    press(grid(el), 'ContextMenu');
    await el.updateComplete;
    await frame();
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    press(one(el, '.menu [role=menuitem]'), 'Escape');
    el.readonly = true;
    await el.updateComplete;
    press(grid(el), 'ContextMenu');
    await el.updateComplete;
    await frame();
    expect(el.renderRoot.querySelector('[data-act=clear]')).to.equal(null);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

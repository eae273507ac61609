import { expect, fixture, html } from '@open-wc/testing';
import '../../components/sheet/define.js';
import { keyIds, keyTable, type KeyId } from '../../components/sheet/grid/key-table.js';
import type { PossessionSheet } from '../../components/sheet/sheet.js';
import { frame } from './support/samples.js';

/** 40 rows of 3 columns, with the focus in the middle: every key has somewhere to go. */
async function shown(): Promise<PossessionSheet> {
  const el = await fixture<PossessionSheet>(html`<possession-sheet></possession-sheet>`);
  el.table = {
    file: 'work.csv',
    columns: ['id', 'title', 'minutes'],
    rows: Array.from({ length: 40 }, (_, at) => [`W${at}`, `Work ${at}`, `${at * 10}`]),
  };
  el.style.setProperty('height', '320px');
  await frame();
  await el.updateComplete;
  el.goTo(20, 'title');
  await el.updateComplete;
  grid(el).focus();
  return el;
}
const one = <E extends HTMLElement>(el: PossessionSheet, what: string): E | null =>
  el.renderRoot.querySelector<E>(what);
const grid = (el: PossessionSheet): HTMLElement => one(el, '[role=grid]')!;
const field = (el: PossessionSheet): HTMLTextAreaElement | null => one(el, 'textarea.typing');
const page = (el: PossessionSheet): number => Math.floor((grid(el).clientHeight - 34) / 30) - 1;

/** Presses a chord as the table writes it. Returns whether the browser is kept from its own. */
async function hit(el: PossessionSheet, chord: string, on: Element = grid(el)): Promise<boolean> {
  const parts = chord.split('+');
  const key = parts.pop()!.replace('Space', ' ');
  const event = new KeyboardEvent('keydown', {
    key,
    ctrlKey: parts.includes('Ctrl'),
    shiftKey: parts.includes('Shift'),
    altKey: parts.includes('Alt'),
    bubbles: true,
    cancelable: true,
    composed: true,
  });
  on.dispatchEvent(event);
  await el.updateComplete;
  await frame();
  return event.defaultPrevented;
}

type Check = (el: PossessionSheet, chord: string) => void | Promise<void>;

/** The chord moves the focus to a cell; the row may hang on how many rows are in sight. */
const goesTo =
  (row: number | ((el: PossessionSheet) => number), column: number): Check =>
  async (el, chord) => {
    const wanted = typeof row === 'number' ? row : row(el);
    expect(await hit(el, chord)).to.equal(true);
    expect(grid(el).getAttribute('aria-activedescendant')).to.equal(`cell-${wanted}-${column}`);
    expect(one(el, '.body [aria-selected=true]')!.id).to.equal(`cell-${wanted}-${column}`);
  };

/** The chord makes a block of so many rows and columns. */
const chooses =
  (rows: number | ((el: PossessionSheet) => number), columns: number): Check =>
  async (el, chord) => {
    const down = typeof rows === 'number' ? rows : rows(el);
    expect(await hit(el, chord)).to.equal(true);
    const counted = `${down} row${down === 1 ? '' : 's'} by ${columns} column${columns === 1 ? '' : 's'}`;
    expect(one(el, '.said')!.textContent).to.contain(`${counted} chosen`);
  };

const cell = (el: PossessionSheet, row: number, column: number): string =>
  el.table.rows[row]![column]!;

const begins: Check = async (el, chord) => {
  await hit(el, chord);
  expect(field(el)!.value).to.equal('Work 20');
};
const clears: Check = async (el, chord) => {
  await hit(el, chord);
  expect([cell(el, 20, 1), cell(el, 21, 1)]).to.deep.equal(['', 'Work 21']);
};
const doesAgain: Check = async (el, chord) => {
  await hit(el, 'Delete');
  await hit(el, 'Ctrl+Z');
  expect(cell(el, 20, 1)).to.equal('Work 20');
  await hit(el, chord);
  expect(cell(el, 20, 1)).to.equal('');
};

/** The key is left to the browser, whose clipboard event does the work. */
const byClipboard =
  (type: 'copy' | 'cut' | 'paste', after: (el: PossessionSheet, data: DataTransfer) => void) =>
  async (el: PossessionSheet, chord: string): Promise<void> => {
    expect(await hit(el, chord)).to.equal(false);
    const data = new DataTransfer();
    if (type === 'paste') data.setData('text/plain', 'pasted');
    grid(el).dispatchEvent(
      new ClipboardEvent(type, { clipboardData: data, bubbles: true, cancelable: true }),
    );
    await el.updateComplete;
    after(el, data);
  };

const keepsAnd =
  (row: number, column: number): Check =>
  async (el, chord) => {
    await hit(el, 'F2');
    field(el)!.value = 'typed';
    await hit(el, chord, field(el)!);
    expect(cell(el, 20, 1)).to.equal('typed');
    expect(grid(el).getAttribute('aria-activedescendant')).to.equal(`cell-${row}-${column}`);
  };
const opensMenu: Check = async (el, chord) => {
  expect(await hit(el, chord)).to.equal(true);
  expect(one(el, '.menu')!.matches(':popover-open')).to.equal(true);
  expect(el.shadowRoot!.activeElement!.getAttribute('role')).to.equal('menuitem');
};

/** By the name of the key's act, then by chord. */
const cases: Readonly<Record<KeyId, Readonly<Record<string, Check>>>> = {
  step: {
    ArrowUp: goesTo(19, 1),
    ArrowDown: goesTo(21, 1),
    ArrowLeft: goesTo(20, 0),
    ArrowRight: goesTo(20, 2),
  },
  edge: {
    'Ctrl+ArrowUp': goesTo(0, 1),
    'Ctrl+ArrowDown': goesTo(39, 1),
    'Ctrl+ArrowLeft': goesTo(20, 0),
    'Ctrl+ArrowRight': goesTo(20, 2),
  },
  rowEnds: { Home: goesTo(20, 0), End: goesTo(20, 2) },
  tableEnds: { 'Ctrl+Home': goesTo(0, 0), 'Ctrl+End': goesTo(39, 2) },
  page: {
    PageUp: goesTo((el) => 20 - page(el), 1),
    PageDown: goesTo((el) => 20 + page(el), 1),
  },
  extend: {
    'Shift+ArrowUp': chooses(2, 1),
    'Shift+ArrowDown': chooses(2, 1),
    'Shift+ArrowLeft': chooses(1, 2),
    'Shift+ArrowRight': chooses(1, 2),
  },
  extendFar: {
    'Ctrl+Shift+ArrowUp': chooses(21, 1),
    'Ctrl+Shift+ArrowDown': chooses(20, 1),
    'Ctrl+Shift+ArrowLeft': chooses(1, 2),
    'Ctrl+Shift+ArrowRight': chooses(1, 2),
    'Shift+Home': chooses(1, 2),
    'Shift+End': chooses(1, 2),
    'Shift+PageUp': chooses((el) => page(el) + 1, 1),
    'Shift+PageDown': chooses((el) => page(el) + 1, 1),
    'Ctrl+Shift+Home': chooses(21, 2),
    'Ctrl+Shift+End': chooses(20, 2),
  },
  all: { 'Ctrl+A': chooses(40, 3) },
  column: { 'Ctrl+Space': chooses(40, 1) },
  row: { 'Shift+Space': chooses(1, 3) },
  single: {
    Escape: async (el) => {
      await hit(el, 'Ctrl+A');
      await hit(el, 'Escape');
      expect(el.renderRoot.querySelectorAll('.body [aria-selected=true]').length).to.equal(1);
    },
  },
  edit: { Enter: begins, F2: begins },
  clear: { Delete: clears, Backspace: clears },
  copy: {
    'Ctrl+C': byClipboard('copy', (el, data) => {
      expect(data.getData('text/plain')).to.equal('Work 20');
      expect(cell(el, 20, 1)).to.equal('Work 20');
    }),
  },
  cut: {
    'Ctrl+X': byClipboard('cut', (el, data) => {
      expect(data.getData('text/plain')).to.equal('Work 20');
      expect(cell(el, 20, 1)).to.equal('');
    }),
  },
  paste: { 'Ctrl+V': byClipboard('paste', (el) => expect(cell(el, 20, 1)).to.equal('pasted')) },
  undo: {
    'Ctrl+Z': async (el, chord) => {
      await hit(el, 'Delete');
      await hit(el, chord);
      expect(cell(el, 20, 1)).to.equal('Work 20');
    },
  },
  redo: { 'Ctrl+Y': doesAgain, 'Ctrl+Shift+Z': doesAgain },
  fillDown: {
    'Ctrl+D': async (el, chord) => {
      await hit(el, chord);
      expect([cell(el, 19, 1), cell(el, 20, 1)]).to.deep.equal(['Work 19', 'Work 19']);
    },
  },
  fillAcross: {
    'Ctrl+Shift+D': async (el, chord) => {
      await hit(el, chord);
      expect(el.table.rows[20]).to.deep.equal(['W20', 'W20', '200']);
    },
  },
  keepDown: { Enter: keepsAnd(21, 1) },
  keepUp: { 'Shift+Enter': keepsAnd(19, 1) },
  keepOn: { Tab: keepsAnd(20, 2) },
  keepBack: { 'Shift+Tab': keepsAnd(20, 0) },
  newLine: {
    'Alt+Enter': async (el, chord) => {
      await hit(el, 'F2');
      field(el)!.setSelectionRange(4, 5);
      await hit(el, chord, field(el)!);
      await hit(el, 'Enter', field(el)!);
      expect(cell(el, 20, 1)).to.equal('Work\n20');
    },
  },
  leave: {
    Escape: async (el, chord) => {
      await hit(el, 'F2');
      field(el)!.value = 'no';
      await hit(el, chord, field(el)!);
      expect(field(el)).to.equal(null);
      expect(cell(el, 20, 1)).to.equal('Work 20');
      expect(el.shadowRoot!.activeElement).to.equal(grid(el));
    },
  },
  find: {
    'Ctrl+F': async (el, chord) => {
      expect(await hit(el, chord)).to.equal(true);
      expect(el.shadowRoot!.activeElement).to.equal(one(el, '.finder input'));
    },
  },
  menu: { ContextMenu: opensMenu, 'Shift+F10': opensMenu },
  help: {
    '?': async (el, chord) => {
      await hit(el, chord);
      expect(one<HTMLDialogElement>(el, '.help')!.open).to.equal(true);
    },
  },
};

describe('possession-sheet: each key of its table', () => {
  for (const id of keyIds) {
    it(`has a case for every chord of ${id}`, () => {
      expect(Object.keys(cases[id]).sort()).to.deep.equal([...keyTable[id].keys].sort());
    });
    for (const [chord, check] of Object.entries(cases[id]))
      it(`${chord}: ${id}`, async () => {
        await check(await shown(), chord);
      });
  }
});

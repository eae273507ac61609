import { expect, fixture, html } from '@open-wc/testing';
import '../../components/import/define.js';
import type { ImportAcceptEvent } from '../../components/import/import-accept-event.js';
import type { PossessionImport } from '../../components/import/import.js';
import { importFiles } from '../../src/engine/import/import-files.js';
import type { Engine } from '../../src/engine/types.js';
import { emptyPlan, type PlanDocument } from '../../src/model/index.js';
import { exportTables } from '../../src/tables/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { frame } from './support/samples.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const nights =
  'window;start;end;foreman\nW1;03/04/2027 23:00;05:00;Ash\nW2;04/04/2027 23:00;04:99;Birch\n';
const engine: Pick<Engine, 'importFiles'> = {
  importFiles: (files, document, _, onProgress) => importFiles(files, document, onProgress),
};
const empty = emptyPlan('Marl Vale', 'Europe/London');

const shown = (
  document: PlanDocument = empty,
  by: Pick<Engine, 'importFiles'> = engine,
): Promise<PossessionImport> =>
  fixture(html`<possession-import .engine=${by} .document=${document}></possession-import>`);
const text = (el: PossessionImport): string => el.renderRoot.textContent.replaceAll(/\s+/g, ' ');
const settled = async (el: PossessionImport, ready: () => boolean): Promise<void> => {
  for (let turn = 0; turn < 200 && !ready(); turn += 1) await frame();
  await el.updateComplete;
};
const select = (el: PossessionImport, label: string): HTMLSelectElement =>
  [...el.renderRoot.querySelectorAll('label')]
    .find((element) => element.textContent.trim().startsWith(label))!
    .querySelector('select')!;
const pick = async (
  el: PossessionImport,
  from: HTMLSelectElement,
  value: string,
  ready: () => boolean,
): Promise<void> => {
  from.value = value;
  from.dispatchEvent(new Event('change', { bubbles: true }));
  await settled(el, ready);
};
const idle = async (el: PossessionImport): Promise<void> => {
  await frame();
  await settled(el, () => !text(el).includes('Stop reading'));
};
const taken = (el: PossessionImport): ImportAcceptEvent[] => {
  const events: ImportAcceptEvent[] = [];
  el.addEventListener('possession-import-accept', (event) => events.push(event));
  return events;
};
const take = (el: PossessionImport): void =>
  el.renderRoot.querySelector<HTMLButtonElement>('button.strong')!.click();

describe('possession-import, the choices', () => {
  beforeEach(() => localStorage.removeItem('possession-fit/reading'));

  it('tells what was found, with the rows that each choice touches', async () => {
    const el = await shown();
    await el.read([{ name: 'nights.csv', bytes: bytes(nights) }]);
    expect(select(el, 'Cells are parted by').value).to.equal(';');
    expect(select(el, 'Letters are written in').value).to.equal('utf-8');
    expect(text(el)).to.contain('1 row would mean another day the other way round.');
    expect(text(el)).to.contain('adds 2 rows');
    expect(el.renderRoot.querySelector('.rows td.bad')!.textContent).to.contain('04:99');
  });

  it('reads dates month first once that is chosen, and keeps it in the plan', async () => {
    const el = await shown();
    const events = taken(el);
    await el.read([{ name: 'nights.csv', bytes: bytes(nights) }]);
    await pick(
      el,
      select(el, 'Dates such as'),
      'month-first',
      () => select(el, 'Dates such as').value === 'month-first',
    );
    await idle(el);
    take(el);
    expect(events[0]!.document.tables.windows.dateOrder).to.equal('month-first');
    expect(events[0]!.document.tables.windows.rows[0]![1]).to.equal('03/04/2027 23:00');
  });

  it('splits at another sign once that is chosen', async () => {
    const el = await shown();
    await el.read([{ name: 'nights.csv', bytes: bytes(nights) }]);
    await pick(el, select(el, 'Cells are parted by'), ',', () =>
      text(el).includes('not recognised'),
    );
    expect(text(el)).to.contain('not recognised');
  });

  it('reads a column as what is chosen, and remembers it for the same headings', async () => {
    const el = await shown();
    const events = taken(el);
    const odd = bytes('window,wann,end\nW1,2027-04-03 23:00,05:00\n');
    await el.read([{ name: 'a.csv', bytes: odd }]);
    expect(select(el, 'This is a table of').value).to.equal('windows');
    expect(text(el)).to.contain('No column holds start.');
    const column = el.renderRoot.querySelector<HTMLSelectElement>('[data-column="1"]')!;
    await pick(el, column, 'start', () => !text(el).includes('No column holds start.'));
    await idle(el);
    take(el);
    expect(events[0]!.document.tables.windows.map!['start']).to.equal('wann');
    // In another sitting, with another file of these headings: it is said, and can be taken back.
    const next = await shown();
    await next.read([{ name: 'b.csv', bytes: odd }]);
    const chosen = (): string =>
      next.renderRoot.querySelector<HTMLSelectElement>('[data-column="1"]')!.value;
    expect(chosen()).to.equal('start');
    expect(text(next)).to.contain('Read as you chose for these headings before.');
    next.renderRoot.querySelector<HTMLElement>('.as-before button')!.click();
    await idle(next);
    await settled(next, () => text(next).includes('No column holds start.'));
    expect(text(next)).not.to.contain('Read as you chose');
    const third = await shown();
    await third.read([{ name: 'c.csv', bytes: odd }]);
    expect(text(third)).to.contain('No column holds start.');
  });

  it('shows what is done with a first table as chosen: there is one way to take it', async () => {
    const el = await shown();
    await el.read([
      { name: 'a.csv', bytes: bytes('window,start,end\nW1,2027-04-03 23:00,05:00\n') },
    ]);
    const ways = [...el.renderRoot.querySelectorAll<HTMLInputElement>('.ways input')];
    expect(ways.map((element) => [element.value, element.checked])).to.deep.equal([
      ['replace', true],
      ['leave', false],
    ]);
  });

  it('reads as it is found where what is kept is not of this page', async () => {
    const odd = bytes('window,wann,end\nW1,2027-04-03 23:00,05:00\n');
    const key = JSON.stringify(['window', 'wann', 'end']);
    for (const kept of ['{', '7', '[[1,2]]', JSON.stringify([[key, { map: { start: 5 } }]])]) {
      localStorage.setItem('possession-fit/reading', kept);
      const el = await shown();
      await el.read([{ name: 'a.csv', bytes: odd }]);
      expect(text(el)).to.contain('No column holds start.');
    }
  });

  it('remembers the line of the headings with the rest', async () => {
    const el = await shown();
    const deep = bytes('Nights of the deck\n\nwindow,wann,end\nW1,2027-04-03 23:00,05:00\n');
    await el.read([{ name: 'a.csv', bytes: deep }]);
    const column = el.renderRoot.querySelector<HTMLSelectElement>('[data-column="1"]')!;
    await pick(el, column, 'start', () => !text(el).includes('No column holds start.'));
    await idle(el);
    take(el);
    const next = await shown();
    await next.read([{ name: 'b.csv', bytes: deep }]);
    expect(next.renderRoot.querySelector<HTMLSelectElement>('[data-column="1"]')!.value).to.equal(
      'start',
    );
  });

  it('asks about each heading that is not read, and reads all that is plain at once', async () => {
    const el = await shown();
    const events = taken(el);
    const odd = bytes(
      'window,start,end,Blokked lnes,Boking staus,Foreman\nW1,2027-04-03 23:00,05:00,Up;Down,offered,Ash\n',
    );
    await el.read([{ name: 'a.csv', bytes: odd }]);
    const asks = el.renderRoot.querySelector('.asks')!;
    expect(asks.textContent).to.contain('Blokked lnes').and.to.contain('Up;Down');
    expect(asks.compareDocumentPosition(el.renderRoot.querySelector('.choices')!)).to.equal(
      Node.DOCUMENT_POSITION_FOLLOWING,
    );
    asks.querySelector<HTMLButtonElement>('[data-plain]')!.click();
    await idle(el);
    const left = el.renderRoot.querySelector('.asks')!;
    expect(left.textContent).to.contain('Foreman').and.not.to.contain('Blokked');
    left.querySelector<HTMLButtonElement>('button[aria-label="Foreman: Leave it unread"]')!.click();
    await idle(el);
    expect(el.renderRoot.querySelector('.asks')).to.equal(null);
    take(el);
    const { windows } = events[0]!.document.tables;
    expect(windows.map).to.include({ lines: 'Blokked lnes', status: 'Boking staus' });
    expect(windows.unread).to.deep.equal(['Foreman']);
    expect(events[0]!.report[0]!.faults).to.deep.equal([]);
  });

  it('loses no choice that is made while another is being read', async () => {
    let goOn!: () => void;
    let held = Promise.resolve();
    const slow: Pick<Engine, 'importFiles'> = {
      importFiles: async (files, document, signal, onProgress) => {
        await held;
        return engine.importFiles(files, document, signal, onProgress);
      },
    };
    const el = await shown(empty, slow);
    const events = taken(el);
    const odd = bytes('a,b,c,d,e,f\nW1,2027-04-03 23:00,05:00,Up,OV1,offered\n');
    await el.read([{ name: 'a.csv', bytes: odd, choices: { kind: 'windows' } }]);
    held = new Promise<void>((done) => (goOn = done));
    for (const [at, field] of [
      'window',
      'start',
      'end',
      'lines',
      'isolation',
      'status',
    ].entries()) {
      const column = el.renderRoot.querySelector<HTMLSelectElement>(`[data-column="${at}"]`)!;
      column.value = field;
      column.dispatchEvent(new Event('change', { bubbles: true }));
      await el.updateComplete;
      expect(column.value).to.equal(field);
    }
    goOn();
    await settled(el, () => !text(el).includes('Stop reading'));
    take(el);
    expect(events[0]!.document.tables.windows.map).to.include({
      window: 'a',
      start: 'b',
      end: 'c',
      lines: 'd',
      isolation: 'e',
      status: 'f',
    });
  });

  it('adds to what stands unless it is to be replaced', async () => {
    const { document } = await engine.importFiles(
      [{ name: 'n.csv', bytes: bytes('window,start,end\nW1,2027-04-03 23:00,05:00\n') }],
      empty,
    );
    const el = await shown(document);
    const events = taken(el);
    const two = 'window,start,end\nW2,2027-04-04 23:00,05:00\nW3,2027-04-05 23:00,05:00\n';
    await el.read([{ name: 'pasted cells', bytes: bytes(two) }]);
    expect(text(el)).to.contain('replaces 1 row; 1 of them not in the file');
    take(el);
    expect(events[0]!.document.tables.windows.rows.map((row) => row[0])).to.deep.equal([
      'W1',
      'W2',
      'W3',
    ]);
  });

  it('brings a table up to date row by row, with the counts before it is taken', async () => {
    const { document } = await engine.importFiles([{ name: 'n.csv', bytes: bytes(nights) }], empty);
    const el = await shown(document);
    const events = taken(el);
    const next = bytes('window,foreman\nW2,Cedar\nW3,Elm\n');
    await el.read([{ name: 'next.csv', bytes: next, choices: { kind: 'windows' } }]);
    expect(text(el)).to.contain('replaces 2 rows; 1 of them not in the file');
    expect(text(el)).to.contain('changes 1 row, adds 1, leaves 0 as they are; deletes nothing');
    const way = [...el.renderRoot.querySelectorAll<HTMLInputElement>('.way input')][2]!;
    way.click();
    await idle(el);
    take(el);
    expect(events[0]!.document.tables.windows.rows.map((row) => [row[0], row[3]])).to.deep.equal([
      ['W1', 'Ash'],
      ['W2', 'Cedar'],
      ['W3', 'Elm'],
    ]);
  });

  it('reads a workbook, a sheet at a time', async () => {
    const { document } = await engine.importFiles([{ name: 'n.csv', bytes: bytes(nights) }], empty);
    const [book] = await exportTables(document, { format: 'xlsx' });
    const el = await shown();
    await el.read([{ name: 'plan.xlsx', bytes: book!.bytes }]);
    expect(text(el)).to.contain('plan.xlsx, sheet windows');
    expect(text(el)).to.contain('Ash');
  });

  it('can be stopped while it reads, and leaves everything as it was', async () => {
    let aborted = false;
    const slow: Pick<Engine, 'importFiles'> = {
      importFiles: (_, __, signal, onProgress) => {
        onProgress?.({ done: 30, total: 100 });
        return new Promise((_resolve, reject) => {
          signal!.addEventListener('abort', () => {
            aborted = true;
            reject(signal!.reason as Error);
          });
        });
      },
    };
    const el = await shown(empty, slow);
    void el.read([{ name: 'big.csv', bytes: bytes(nights) }]);
    await settled(el, () => text(el).includes('30 %'));
    expect(text(el)).to.contain('Reading, 30 %');
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    [...el.renderRoot.querySelectorAll('button')]
      .find((element) => element.textContent.includes('Stop reading'))!
      .click();
    await settled(el, () => !text(el).includes('Reading'));
    expect(aborted).to.equal(true);
    expect(text(el)).not.to.contain('Could not be read');
    expect(text(el)).to.contain('What a file needs');
  });

  it('fits 390 pixels without scrolling the page sideways', async () => {
    const el = await shown();
    el.style.setProperty('width', '358px');
    await el.read([{ name: 'nights.csv', bytes: bytes(nights) }]);
    expect(el.scrollWidth).to.be.at.most(358);
  });

  it('has no accessibility faults with choices, light and dark', async () => {
    const { document } = await engine.importFiles([{ name: 'n.csv', bytes: bytes(nights) }], empty);
    const el = await shown(document);
    await el.read([
      { name: 'nights.csv', bytes: bytes(nights) },
      { name: 'odd.csv', bytes: bytes('colour,shape\nred,round\n') },
    ]);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

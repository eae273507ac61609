import '../../components/sheet/define.js';
import { better, emptyScroller, frames, spread, type Frames } from '../scroll/frames.js';

const ROWS = 50_000;
const COLUMNS = 20;

async function sheetScroller(): Promise<HTMLElement> {
  const sheet = document.createElement('possession-sheet');
  sheet.style.setProperty('height', '600px');
  sheet.table = {
    file: 'long.csv',
    columns: Array.from({ length: COLUMNS }, (_, column) => `c${column}`),
    rows: Array.from({ length: ROWS }, (_, row) =>
      Array.from({ length: COLUMNS }, (__, column) => `${row}.${column}`),
    ),
  };
  document.body.replaceChildren(sheet);
  await sheet.updateComplete;
  return sheet.renderRoot.querySelector<HTMLElement>('[role=grid]')!;
}

/** Both in one run, each twice by turns, the better of each: a busy machine disturbs either. */
async function measure(): Promise<{ empty: Frames; sheet: Frames; ratio: number }> {
  const seen: Record<'empty' | 'sheet', Frames[]> = { empty: [], sheet: [] };
  for (let round = 0; round < 2; round += 1) {
    const empty = emptyScroller(600, ROWS * 30);
    document.body.replaceChildren(empty);
    seen.empty.push(await frames(empty));
    seen.sheet.push(await frames(await sheetScroller()));
  }
  const [empty, sheet] = [better(seen.empty), better(seen.sheet)];
  return { empty, sheet, ratio: sheet.p95 / empty.p95 };
}

/** Milliseconds from the key that keeps what was typed to the frame that shows it, over 40 cells far apart. */
async function measureEdits(): Promise<Frames> {
  const scroller = await sheetScroller();
  const sheet = document.querySelector('possession-sheet')!;
  const key = (on: Element, name: string): boolean =>
    on.dispatchEvent(
      new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true, composed: true }),
    );
  /** Resolves once a frame has been drawn: what is posted from within it comes after. */
  const drawn = (): Promise<void> =>
    new Promise((done) =>
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => done();
        channel.port2.postMessage(undefined);
      }),
    );
  const times: number[] = [];
  for (let turn = 0; turn < 40; turn += 1) {
    const row = (turn * 7_919) % ROWS;
    sheet.goTo(row, `c${turn % COLUMNS}`);
    await sheet.updateComplete;
    key(scroller, 'F2');
    await sheet.updateComplete;
    const field = scroller.querySelector<HTMLTextAreaElement>('textarea.typing')!;
    field.value = `typed ${turn}`;
    await drawn();
    const begun = performance.now();
    key(field, 'Enter');
    await drawn();
    times.push(performance.now() - begun);
    if (sheet.table.rows[row]![turn % COLUMNS] !== `typed ${turn}`)
      throw new Error(`Row ${row} was not changed.`);
  }
  return spread(times);
}

Object.assign(globalThis, { measure, measureEdits });

import '../../components/sheet/define.js';

const ROWS = 50_000;
const COLUMNS = 20;

export interface Frames {
  readonly median: number;
  readonly p95: number;
  readonly max: number;
}

/** Frame times in milliseconds while an element scrolls 240 steps, every fortieth of them a jump. */
async function frames(scroller: HTMLElement): Promise<Frames> {
  const next = (): Promise<number> => new Promise(requestAnimationFrame);
  const times: number[] = [];
  let last = await next();
  for (let step = 1; step <= 240; step += 1) {
    scroller.scrollTop = step % 40 === 0 ? step * 5_000 : scroller.scrollTop + 170;
    const now = await next();
    times.push(now - last);
    last = now;
  }
  times.sort((a, b) => a - b);
  return { median: times[120]!, p95: times[228]!, max: times[239]! };
}

/** A scroller of the same height with nothing in it: what the machine takes for scrolling alone. */
function emptyScroller(): HTMLElement {
  const outer = document.createElement('div');
  outer.style.setProperty('overflow', 'auto');
  outer.style.setProperty('height', '600px');
  const inner = document.createElement('div');
  inner.style.setProperty('height', `${ROWS * 30}px`);
  outer.append(inner);
  return outer;
}

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
    const empty = emptyScroller();
    document.body.replaceChildren(empty);
    seen.empty.push(await frames(empty));
    seen.sheet.push(await frames(await sheetScroller()));
  }
  const best = (all: Frames[]): Frames => all.reduce((a, b) => (b.p95 < a.p95 ? b : a));
  const [empty, sheet] = [best(seen.empty), best(seen.sheet)];
  return { empty, sheet, ratio: sheet.p95 / empty.p95 };
}

export interface EditTimes {
  readonly median: number;
  readonly p95: number;
  readonly max: number;
}

/** Milliseconds from the key that keeps what was typed to the frame that shows it, over 40 cells far apart. */
async function measureEdits(): Promise<EditTimes> {
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
  times.sort((a, b) => a - b);
  return { median: times[20]!, p95: times[38]!, max: times[39]! };
}

Object.assign(globalThis, { measure, measureEdits });

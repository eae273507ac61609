import '../../components/desk/define.js';
import type { DeskView } from '../../components/desk/desk.js';
import { createWorkerEngine } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import type { TableChange } from '../../src/plan/index.js';
import { spread, type Frames } from '../scroll/frames.js';
import { largePlan } from './large-plan.js';

const EDITS = 40;
/** Edits before what is counted: a page is quick once its code has run a few times. */
const WARM_UP = 10;

/** Milliseconds until the next frame has been made and handed to the screen. */
async function frame(from = performance.now()): Promise<number> {
  await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
  return performance.now() - from;
}

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** What a person types into a cell of the plan. */
type Typed = (document: PlanDocument, row: number, turn: number) => TableChange;

const otherMinutes: Typed = ({ tables: { work } }, row, turn) => ({
  table: 'work',
  of: work,
  steps: [{ cells: [{ row, column: work.columns.indexOf('minutes'), text: String(30 + turn) }] }],
});

const otherEnd: Typed = ({ tables: { windows } }, row, turn) => {
  const column = windows.columns.indexOf('end');
  const text = windows.rows[row]![column]!.replace(/\d\d$/, String(31 + (turn % 20)));
  return { table: 'windows', of: windows, steps: [{ cells: [{ row, column, text }] }] };
};

const edits: readonly [view: DeskView, edit: Typed][] = [
  ['windows', otherEnd],
  ['work', otherMinutes],
  ['fit', otherMinutes],
];

interface Measured {
  readonly empty: Frames;
  readonly cell: Frames;
  readonly figures: Frames;
  /** Of the median to that of two frames with nothing to do. */
  readonly ratio: number;
}

async function measure(windows: number, packages: number): Promise<Record<string, Measured>> {
  const desk = document.createElement('possession-desk');
  desk.engine = createWorkerEngine();
  document.body.replaceChildren(desk);
  await desk.adopt(largePlan(windows, packages));
  await desk.updateComplete;

  const found: Record<string, Measured> = {};
  for (const [view, edit] of edits) {
    desk.show(view);
    await desk.updateComplete;
    await wait(500);
    const times = { empty: [] as number[], cell: [] as number[], figures: [] as number[] };
    for (let turn = 0; turn < WARM_UP + EDITS; turn += 1) {
      await wait(60);
      const idle = performance.now();
      await frame();
      const empty = await frame(idle);
      const began = performance.now();
      desk.change(edit(desk.document!, 3 + (turn % 9), turn), 'one cell');
      const cell = await frame(began);
      await desk.updateComplete;
      const figures = await frame(began);
      if (turn < WARM_UP) continue;
      times.empty.push(empty);
      times.cell.push(cell);
      times.figures.push(figures);
    }
    const [empty, cell, figures] = [spread(times.empty), spread(times.cell), spread(times.figures)];
    found[view] = { empty, cell, figures, ratio: figures.median / empty.median };
  }
  return found;
}

Object.assign(globalThis, { measure });

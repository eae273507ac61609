import { answeredOnce } from './answered-once.js';
import { limitSets, ruleSets, samplePlan } from '../sample-plan.js';
import {
  createWorkerEngine,
  type Allocation,
  type Engine,
  type Results,
} from '../../src/engine/index.js';
import type {
  AccessWindow,
  LimitSet,
  PlanDocument,
  RuleSet,
  TableText,
} from '../../src/model/index.js';

/** What the code of a specimen may use: a plan and what the engine made of it. */
export interface Shown {
  readonly engine: Engine;
  readonly planDocument: PlanDocument;
  readonly results: Results;
  readonly plan: Allocation;
  /** The first window with planned work. */
  readonly accessWindow: AccessWindow;
  readonly limitSets: readonly LimitSet[];
  readonly ruleSets: readonly RuleSet[];
}

/** Gives an element its data. Its source is shown as code to copy, so it uses what the package gives to everybody. */
export type Show<Tag extends keyof HTMLElementTagNameMap> = (
  element: HTMLElementTagNameMap[Tag],
  shown: Shown,
) => void | Promise<void>;

const engine = answeredOnce(
  createWorkerEngine(
    () => new Worker(new URL('../../src/engine/worker.ts', import.meta.url), { type: 'module' }),
  ),
);

const once = <T>(make: () => Promise<T>): (() => Promise<T>) => {
  let made: Promise<T> | undefined;
  return () => (made ??= make());
};

/** The sample plan, worked out when the first specimen asks. */
export const sample = once(async (): Promise<Shown> => {
  const { document } = await samplePlan(engine);
  const [results, plan] = await Promise.all([
    engine.recompute(document),
    engine.allocate(document, {}),
  ]);
  return shownOf(document, results, plan);
});

/** The sample plan after cells went wrong, with the work where it was planned before. */
export const troubled = once(async (): Promise<Shown> => {
  const { planDocument: good, plan: before, accessWindow } = await sample();
  const document = spoilt(good, accessWindow.id);
  const [results, { allocation }] = await Promise.all([
    engine.recompute(document),
    engine.assess(document, before.placements),
  ]);
  return shownOf(document, results, allocation, accessWindow.id);
});

function shownOf(document: PlanDocument, results: Results, plan: Allocation, id?: string): Shown {
  const { windows } = results.plan;
  const used = new Set(plan.placements.map((placement) => placement.window));
  const accessWindow = windows.find((window) => (id ? window.id === id : used.has(window.id)));
  if (!accessWindow) throw new Error('No window of the sample plan has work in it.');
  return { engine, planDocument: document, results, plan, accessWindow, limitSets, ruleSets };
}

/** A window that ends earlier, one withdrawn, one without a time that can be read, and work of unread length. */
function spoilt(document: PlanDocument, cut: string): PlanDocument {
  const { windows, work } = document.tables;
  const ids = windows.rows.map((row) => row[windows.columns.indexOf('window')] ?? '');
  const [withdrawn = '', unread = ''] = ids.filter((text) => text !== cut);
  const cellOf = (column: string): string =>
    windows.rows[ids.indexOf(cut)]?.[windows.columns.indexOf(column)] ?? '';
  let next = withCell(windows, ids.indexOf(cut), 'end', threeHoursOn(cellOf('start')));
  // Times of its isolation would lie beyond the earlier end.
  const sections = cellOf('isolation')
    .split(';')
    .map((section) => section.split(' [')[0]!);
  next = withCell(next, ids.indexOf(cut), 'isolation', sections.join(';'));
  next = withCell(next, ids.indexOf(withdrawn), 'status', 'withdrawn');
  next = withCell(next, ids.indexOf(unread), 'end', 'half past five');
  return {
    ...document,
    tables: { ...document.tables, windows: next, work: withCell(work, 1, 'minutes', 'a while') },
  };
}

/** Wall-clock text three hours after another; a night of the sample has no clock change in them. */
function threeHoursOn(start: string): string {
  const at = Date.parse(`${start.replace(' ', 'T')}Z`) + 3 * 3_600_000;
  return new Date(at).toISOString().slice(0, 16).replace('T', ' ');
}

function withCell(table: TableText, at: number, column: string, text: string): TableText {
  const place = table.columns.indexOf(column);
  const rows = table.rows.map((row, index) => (index === at ? row.with(place, text) : row));
  return { ...table, rows };
}

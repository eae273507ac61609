import type { Figure } from '../../shared/figure-ask-event.js';
import type { Explanation } from '../../why/explanation.js';
import type { Desk } from '../desk-parts.js';
import { valueIn } from '../frame/table-lookup.js';
import type { Explanations } from '../frame/picked.js';
import type { ResultTable } from '../views.js';

/** The panel says where a worked-out value of a row comes from. */
export function askResult(desk: Desk, kind: ResultTable, row: number, column: string): void {
  const table = desk.document?.tables[kind];
  if (!table) return;
  if (kind === 'windows') askOfWindow(desk, valueIn(table, kind, row, 'window'), column);
  else
    askOfWork(
      desk,
      valueIn(table, kind, row, 'activity'),
      valueIn(table, kind, row, 'package'),
      column,
    );
}

function askOfWindow(desk: Desk, id: string, column: string): void {
  const { picked, figures, planning } = desk;
  if (!figures.results?.plan.windows.some((window) => window.id === id)) return;
  picked.pick({ window: id });
  const figure: Figure | undefined =
    column === 'margin' || column === 'verdict'
      ? { of: 'handback-margin', window: id }
      : column === 'chance'
        ? { of: 'on-time', window: id }
        : undefined;
  picked.explain((why) => {
    if (column === 'holds' || column === 'clear')
      return why.tellWindowWork(figures.results, planning.shown, id);
    return (
      (figure && explained(why, desk, figure)) ??
      why.tellLedger(figures.results, id, ledgerRow(column))
    );
  });
}

const ledgerRow = (column: string): 'gross' | 'usable' => (column === 'gross' ? 'gross' : 'usable');

function askOfWork(desk: Desk, id: string, name: string, column: string): void {
  const { picked, figures, planning, document } = desk;
  picked.explain((why) => {
    const { results } = figures;
    const plan = planning.shown;
    if (!results || column === 'fits' || !plan) return why.tellPackage(results, name);
    if (column === 'programme-float')
      return (
        explained(why, desk, { of: 'key-date', package: name }) ?? why.tellPackage(results, name)
      );
    const at = plan.placements.findIndex((placement) => placement.activity === id);
    if (at >= 0)
      return why.explainPlacement(plan, at, results.plan.activities, document?.zone ?? '');
    return why.tellLeftOver(plan, id) ?? why.tellPackage(results, name);
  });
}

/** What is said of a figure that other elements show too; null where its answer is not there. */
export function explained(why: Explanations, desk: Desk, figure: Figure): Explanation | null {
  const { figures, outlooks, planning, document } = desk;
  return why.explainFigure(figure, {
    results: figures.results,
    handbacks: outlooks.handbacks,
    price: outlooks.price,
    book: outlooks.booked,
    allocation: planning.shown,
    before: planning.earlier,
    zone: document?.zone ?? '',
  });
}

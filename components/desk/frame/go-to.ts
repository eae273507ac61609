import type { TableKind } from '../../../src/model/index.js';
import type { PossessionRules } from '../../rules/rules.js';
import type { PossessionSheet } from '../../sheet/sheet.js';
import type { Place } from '../../why/explanation.js';
import type { Desk } from '../desk-parts.js';
import { pickFit } from '../views/fit-view.js';
import { headingOf, rowWith } from './table-lookup.js';
import { askLedger } from '../views/windows-view.js';

type Root = ParentNode;
type Shown = Desk & { readonly updateComplete: Promise<boolean> };

/** Shows where a figure comes from: a verdict, a window, a row or a cell. */
export async function goTo(desk: Shown, root: Root, place: Place): Promise<void> {
  const tables = desk.document?.tables;
  if (place.to === 'fit') {
    desk.show('fit');
    pickFit(desk, place);
  } else if (place.to === 'rule') {
    desk.show('rules');
    await desk.updateComplete;
    await customElements.whenDefined('possession-rules');
    root.querySelector<PossessionRules>('possession-rules')?.goTo(place.id);
  } else if (!tables) return;
  else if (place.to === 'window') {
    desk.show('windows');
    desk.picked.pick({ window: place.id });
    askLedger(desk, 'usable');
  } else if (place.to === 'cell')
    await goToCell(desk, root, place.table, place.row, place.column ?? '');
  else {
    const row = rowWith(tables.work, 'work', place.to, place.id);
    await goToCell(desk, root, 'work', row, headingOf(tables.work, 'work', place.to) ?? '');
  }
}

async function goToCell(
  desk: Shown,
  root: Root,
  kind: TableKind,
  row: number,
  column: string,
): Promise<void> {
  if (row < 0) return;
  // What was told of the figure stays beside the cell it leads to.
  const { explanation: told } = desk.picked;
  desk.show('work');
  desk.workTable = kind;
  desk.picked.explain(() => told);
  await desk.updateComplete;
  const sheet = root.querySelector<PossessionSheet>(`[data-kind=${kind}]`);
  await customElements.whenDefined('possession-sheet');
  await sheet?.updateComplete;
  sheet?.goTo(row, column);
  sheet?.scrollIntoView({ block: 'nearest' });
}

/** The sheet moves to the row of the window picked elsewhere; a cell of that row stays where it is. */
export async function followInSheet({ document, picked }: Desk, root: Root): Promise<void> {
  const sheet = root.querySelector<PossessionSheet>('[data-kind=windows]');
  const table = document?.tables.windows;
  const row = table ? rowWith(table, 'windows', 'window', picked.window) : -1;
  if (!sheet || row < 0) return;
  // A page may define the desk before the elements in it.
  await customElements.whenDefined('possession-sheet');
  await sheet.updateComplete;
  if (sheet.isConnected && sheet.currentRow !== row) sheet.goTo(row);
}

import type { Results } from '../../src/engine/index.js';
import type { PeerSheet } from './peer.js';
import { columns, type SheetName } from './peer-sheet.js';

/**
 * Holds our answers against the peer's, since a time is worth nothing beside another answer: the gross of every window,
 * the usable minutes where no curfew or shift takes part of them, the minutes of every package. With `pairs` it prints
 * how often both say that a package fits; ours also asks for lines, extent, isolation, order and resources.
 *
 * @throws {Error} Where the two differ.
 */
export function checkSame(results: Results, sheet: PeerSheet, pairs: boolean): void {
  const read = (name: SheetName, row: number, col: number): unknown =>
    sheet.getCellValue({ sheet: sheet.getSheetId(name)!, row, col });
  const faults = results.faults.filter((fault) => fault.severity === 'error');
  if (faults.length > 0) throw new Error(`the plan has a fault: ${faults[0]!.code}`);

  let compared = 0;
  results.ledgers.forEach((ledger, row) => {
    same(ledger.grossMinutes, read('windows', row, columns.gross), `gross of ${ledger.window}`);
    if (ledger.rows.some(({ kind }) => kind === 'curfew' || kind === 'shift-break')) return;
    if (ledger.barred.length > 0) return;
    compared += 1;
    same(ledger.usableMinutes, read('windows', row, columns.usable), `usable of ${ledger.window}`);
  });
  if (compared < results.ledgers.length / 2) throw new Error('too few windows to compare');
  results.packages.forEach(({ id, minutes }, row) => {
    same(minutes, read('packages', row, columns.packageMinutes), `minutes of ${id}`);
  });
  if (!pairs) return;
  const fits = { both: 0, ours: 0, peer: 0 };
  results.fits.forEach((verdict, at) => {
    const row = at % results.plan.windows.length;
    const theirs = read('fits', row, Math.floor(at / results.plan.windows.length)) === 1;
    fits.ours += verdict.fits ? 1 : 0;
    fits.peer += theirs ? 1 : 0;
    fits.both += verdict.fits && theirs ? 1 : 0;
  });
  console.log(
    `  of ${results.fits.length} pairs ours says that ${fits.ours} fit, the peer by minutes alone ${fits.peer}; both ${fits.both}`,
  );
}

function same(ours: number, theirs: unknown, what: string): void {
  if (ours !== theirs) throw new Error(`${what}: ours ${ours}, the peer's ${String(theirs)}`);
}

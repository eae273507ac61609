// What one side holds after one plan, in a process of its own: `node bench/run.mjs memory/one SIDE WINDOWS ACTIVITIES
// PER-PACKAGE [pairs]`, with `ours` or `peer` for the side. Prints one line of JSON; `memory/heap` reads it.
import { Session } from '../../src/engine/incremental/session.js';
import { applyEdit } from '../../src/edits/index.js';
import type { Results } from '../../src/engine/index.js';
import { windowEdit, workEdit } from '../recompute/edits.js';
import { installPeer, type Sheets } from '../recompute/peer.js';
import { columns, sheetsOf } from '../recompute/peer-sheet.js';
import { sweep } from '../shared/figures.js';
import { planOf, rules } from '../shared/plan.js';
import { SessionWithoutVerdicts } from '../shared/without-verdicts.js';
import type { Held } from './held.js';

const EDITS = 200;
const [side, ...sizes] = process.argv.slice(2);
const [windows, activities, perPackage] = sizes.map(Number) as [number, number, number];
const pairs = sizes[3] === 'pairs';

console.log(JSON.stringify(side === 'peer' ? peer() : ours()));

/** The document as typed, the session and its results; then the same after 200 cells typed one after another. */
function ours(): Held {
  // What the code and what it keeps for ever take is no part of a plan.
  new Session().recompute(planOf(50, 100, perPackage));
  const before = heap();
  let document = planOf(windows, activities, perPackage);
  const session = pairs ? new Session() : new SessionWithoutVerdicts();
  let results: Results = session.recompute(document);
  const full = heap() - before;
  for (let turn = 0; turn < EDITS; turn += 1) {
    const make = turn % 2 === 0 ? windowEdit : workEdit;
    document = applyEdit(document, make(document, results, turn).edit);
    results = session.recompute(document);
  }
  const edited = heap() - before;
  // Asked for after the sweep, so that nothing of it can have been let go before.
  return { full, edited, answers: results.ledgers.length + session.read(document).faults.length };
}

/** The sheets alone: what they were built from, and how we came by it, is let go. */
function peer(): Held {
  const library = installPeer();
  sheetsToBuild();
  library.build({ rules: [[1, '=A1']] }).destroy();
  const before = heap();
  const sheet = library.build(sheetsToBuild());
  const full = heap() - before;
  const [rows, work] = [sheet.getSheetId('windows')!, sheet.getSheetId('work')!];
  for (let turn = 0; turn < EDITS; turn += 1)
    sheet.setCellContents(
      turn % 2 === 0
        ? { sheet: rows, row: (turn * 7919) % windows, col: columns.end }
        : { sheet: work, row: (turn * 7919) % activities, col: columns.minutes },
      turn,
    );
  const edited = heap() - before;
  return { full, edited, answers: sheet.getSheetId('rules')! };
}

function sheetsToBuild(): Sheets {
  const document = planOf(windows, activities, perPackage);
  return sheetsOf(new Session().recompute(document), rules, pairs);
}

/** Megabytes in use once what nobody holds is swept away. */
function heap(): number {
  sweep();
  sweep();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 1e6;
}

// A whole plan of 5,000 windows and 10,000 activities worked out afresh, after one cell, and after one rule, beside the
// same sheet in a general-purpose calculation library. `node bench/run.mjs recompute/compare [--large]`
import { Session } from '../../src/engine/incremental/session.js';
import { applyEdit } from '../../src/edits/index.js';
import type { Results } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { conditions, median, now, quantile, sweep, tell, timed } from '../shared/figures.js';
import { planOf, rules } from '../shared/plan.js';
import { checkSame } from './check-same.js';
import { windowEdit, withMargin, workEdit, type CellEdit } from './edits.js';
import { installPeer, type Peer, type PeerSheet } from './peer.js';
import { sheetsOf } from './peer-sheet.js';

/** A plan to measure with, and how often. */
interface Shape {
  readonly name: string;
  readonly windows: number;
  readonly activities: number;
  readonly perPackage: number;
  /** Whether every package is held against every window; the engine does where these are up to 200,000 pairs. */
  readonly pairs: boolean;
  readonly turns: number;
  readonly edits: number;
}

const plain = { windows: 5000, activities: 10_000, turns: 7, edits: 200 };
const shapes: readonly Shape[] = [
  { ...plain, name: '5,000 x 10,000', perPackage: 4, pairs: false },
  {
    ...plain,
    name: '5,000 x 160, 200,000 verdicts',
    activities: 160,
    perPackage: 4,
    pairs: true,
    turns: 3,
  },
];
/** Packages as large as the limit of pairs makes them at 10,000 activities: slow, so asked for by name. */
const large: Shape = {
  ...plain,
  name: '5,000 x 10,000, 200,000 verdicts, packages of 250',
  perPackage: 250,
  pairs: true,
  turns: 3,
  edits: 20,
};

const peer = installPeer();
console.log(conditions());
for (const shape of process.argv.includes('--large') ? [large] : shapes) {
  const known = full(shape, peer);
  oneEdit(shape, known);
  oneRule(shape, known);
  known.sheet.destroy();
}
console.log(conditions());

/** What is worked out at the end of the full turns, for the edits to start from. */
interface Known {
  readonly session: Session;
  document: PlanDocument;
  results: Results;
  readonly sheet: PeerSheet;
}

/** A new session for a document never seen, and new sheets, in turns. The first turn of each also compiles the code. */
function full(shape: Shape, { build }: Peer): Known {
  const { name, windows, activities, perPackage, pairs, turns } = shape;
  const ours: number[] = [];
  const theirs: number[] = [];
  let known: Known | undefined;
  const sheets = sheetsOf(
    new Session().recompute(planOf(windows, activities, perPackage)),
    rules,
    pairs,
  );
  for (let turn = 0; turn < turns; turn += 1) {
    known?.sheet.destroy();
    known = undefined;
    const document = planOf(windows, activities, perPackage);
    const built = timed(() => build(sheets));
    const session = new Session();
    const made = timed(() => session.recompute(document));
    theirs.push(built.ms);
    ours.push(made.ms);
    known = { session, document, results: made.value, sheet: built.value };
  }
  checkSame(known!.results, known!.sheet, pairs);
  figure(
    `${name}: full, median of ${turns}`,
    median(ours),
    median(theirs),
    pairs ? undefined : '<= 150 ms',
  );
  console.log(
    `  best: ours ${Math.min(...ours).toFixed(0)}, peer ${Math.min(...theirs).toFixed(0)} ms; slowest: ours ${Math.max(...ours).toFixed(0)}, peer ${Math.max(...theirs).toFixed(0)} ms`,
  );
  return known!;
}

/** One cell typed anew in the peer's sheet, then the same one in ours: first of windows, then of work. */
function oneEdit({ name, pairs, edits }: Shape, known: Known): void {
  const kinds = { window: windowEdit, work: workEdit };
  for (const [kind, make] of Object.entries(kinds)) {
    const ours: number[] = [];
    const theirs: number[] = [];
    sweep();
    for (let turn = 0; turn < edits; turn += 1) {
      const edit = make(known.document, known.results, turn);
      theirs.push(peerTakes(known.sheet, edit));
      const before = now();
      known.document = applyEdit(known.document, edit.edit);
      known.results = known.session.recompute(known.document);
      ours.push(now() - before);
    }
    checkSame(known.results, known.sheet, pairs);
    const what = `${name}: one ${kind} cell, ${edits} edits`;
    figure(`${what}, p50`, median(ours), median(theirs));
    figure(`${what}, p95`, quantile(ours, 0.95), quantile(theirs, 0.95), '<= 16 ms');
  }
}

function peerTakes(sheet: PeerSheet, { peer: { sheet: name, row, col, value } }: CellEdit): number {
  const id = sheet.getSheetId(name)!;
  const before = now();
  sheet.setCellContents({ sheet: id, row, col }, value);
  return now() - before;
}

/** One number on which every window and every verdict hangs. */
function oneRule({ name, pairs, turns }: Shape, known: Known): void {
  const ours: number[] = [];
  const theirs: number[] = [];
  const id = known.sheet.getSheetId('rules')!;
  for (let turn = 0; turn < turns; turn += 1) {
    const minutes = 31 + turn;
    theirs.push(
      timed(() => known.sheet.setCellContents({ sheet: id, row: 2, col: 0 }, minutes)).ms,
    );
    const made = timed(() => {
      known.document = withMargin(known.document, minutes);
      return known.session.recompute(known.document);
    });
    known.results = made.value;
    ours.push(made.ms);
  }
  checkSame(known.results, known.sheet, pairs);
  figure(`${name}: the margin, median of ${turns}`, median(ours), median(theirs));
}

function figure(what: string, ours: number, theirs: number, aim?: string): void {
  tell({
    bench: 'recompute',
    what,
    ours,
    peer: theirs,
    against: peer.name,
    unit: 'ms',
    ...(aim && { aim }),
  });
}

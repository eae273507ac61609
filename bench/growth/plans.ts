// How the time grows as plans double: worked out afresh, after one cell, and read from the text of files.
// `node bench/run.mjs growth/plans`. Sizes take turns, so that a busy minute is shared by all.
import { Session } from '../../src/engine/incremental/session.js';
import { applyEdit } from '../../src/edits/index.js';
import type { Results } from '../../src/engine/index.js';
import type { PlanDocument, TableText } from '../../src/model/index.js';
import { planFrom, writeCsv } from '../../src/tables/index.js';
import { windowEdit, workEdit } from '../recompute/edits.js';
import { installPeer } from '../recompute/peer.js';
import { sheetsOf } from '../recompute/peer-sheet.js';
import { conditions, median, now, timed } from '../shared/figures.js';
import { planOf, rules } from '../shared/plan.js';
import { PACKAGES_WITH_VERDICTS, sizes } from '../shared/sizes.js';
import { SessionWithoutVerdicts } from '../shared/without-verdicts.js';
import { tellGrowth } from './tell-growth.js';

const TURNS = 3;
const EDITS = 40;

const peer = installPeer();
console.log(conditions());
grow('full recompute, no verdicts', (windows, activities) => {
  const document = planOf(windows, activities, 2);
  return () => timed(() => new SessionWithoutVerdicts().recompute(document)).ms;
});
const peerSheet = (windows: number, activities: number) => {
  const document = planOf(windows, activities, 2);
  const sheets = sheetsOf(new SessionWithoutVerdicts().recompute(document), rules, false);
  return () => {
    const { ms, value } = timed(() => peer.build(sheets));
    value.destroy();
    return ms;
  };
};
grow(`the same sheet in ${peer.name}`, peerSheet, { whose: 'peer' });
grow('one cell, no verdicts', (windows, activities) =>
  editing(planOf(windows, activities, 2), new SessionWithoutVerdicts()),
);
// Few packages, and the same at every size: the pairs of window and package double, as the windows do.
const fewPackages = { most: PACKAGES_WITH_VERDICTS * 4 };
const withVerdicts = (windows: number, activities: number) => {
  const document = planOf(windows, activities, 4);
  return () => timed(() => new Session().recompute(document)).ms;
};
grow(`full recompute, ${PACKAGES_WITH_VERDICTS} packages with verdicts`, withVerdicts, fewPackages);
grow(
  `one cell, ${PACKAGES_WITH_VERDICTS} packages with verdicts`,
  (windows, activities) => editing(planOf(windows, activities, 4), new Session()),
  fewPackages,
);
grow('CSV text to plan', (windows, activities) => {
  const { tables } = planOf(windows, activities);
  const source = ({ file, columns, rows }: TableText) => ({
    file,
    content: writeCsv(columns, rows),
  });
  const sources = {
    windows: source(tables.windows),
    work: source(tables.work),
    resources: source(tables.resources),
  };
  return () => timed(() => planFrom(sources)).ms;
});
console.log(conditions());

/** Times what `prepare` gives at every size, a turn of each after the other. Two turns come first that do not count. */
function grow(
  what: string,
  prepare: (windows: number, activities: number) => () => number,
  { whose = 'ours', most = Infinity }: { whose?: 'ours' | 'peer'; most?: number } = {},
): void {
  const list = sizes.map(([windows, all]) => {
    const activities = Math.min(all, most);
    const name = `${windows} x ${activities}`;
    return { size: windows, name, turn: prepare(windows, activities), times: [] as number[] };
  });
  for (let turn = -2; turn < TURNS; turn += 1)
    for (const item of list) {
      const ms = item.turn();
      if (turn >= 0) item.times.push(ms);
    }
  tellGrowth(what, list, whose);
}

/** The median of cells typed into one plan, windows and work in turns. */
function editing(start: PlanDocument, session: Session | SessionWithoutVerdicts): () => number {
  let document = start;
  let results: Results = session.recompute(document);
  let turns = 0;
  return () => {
    const times: number[] = [];
    for (let at = 0; at < EDITS; at += 1) {
      const make = at % 2 === 0 ? windowEdit : workEdit;
      const { edit } = make(document, results, (turns += 1));
      const before = now();
      document = applyEdit(document, edit);
      results = session.recompute(document);
      times.push(now() - before);
    }
    return median(times);
  };
}

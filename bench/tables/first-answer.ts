// The bytes of a work table of 100,000 rows to the first answer (import, then everything but verdicts), beside the bare
// parser on the same text: `node bench/run.mjs tables/first-answer`. The parser splits; it knows no column.
import Papa from 'papaparse';
import { Session } from '../../src/engine/incremental/session.js';
import { createInlineEngine, type ImportedFile } from '../../src/engine/index.js';
import { emptyPlan, type PlanDocument, type TableText } from '../../src/model/index.js';
import { writeCsv } from '../../src/tables/index.js';
import { conditions, median, now, sweep, tell } from '../shared/figures.js';
import { planOf } from '../shared/plan.js';

const ROWS = 100_000;
const WINDOWS = 1000;
const ROUNDS = 5;

const { tables, rules } = planOf(WINDOWS, ROWS);
const textOf = ({ columns, rows }: TableText): string => writeCsv(columns, rows);
const work = textOf(tables.work);
const fileOf = (table: TableText): ImportedFile => ({
  name: table.file,
  bytes: new TextEncoder().encode(textOf(table)),
});
const files = [fileOf(tables.windows), fileOf(tables.work), fileOf(tables.resources)];
const empty: PlanDocument = { ...emptyPlan('Bench', 'Europe/London'), rules };
const engine = createInlineEngine();

console.log(conditions());
const bare: number[] = [];
const imported: number[] = [];
const answered: number[] = [];
for (let round = 0; round < ROUNDS; round += 1) {
  sweep();
  let before = now();
  Papa.parse<string[]>(work, { delimiter: ',', newline: '\r\n' });
  bare.push(now() - before);
  sweep();
  before = now();
  const { document } = await engine.importFiles(files, empty);
  imported.push(now() - before);
  const { plan, packages, faults } = new Session().recompute(document);
  answered.push(now() - before);
  const wrong = faults.find((fault) => fault.severity === 'error');
  if (wrong || plan.activities.length !== ROWS || packages.length !== ROWS / 4)
    throw new Error(wrong?.code ?? `${plan.activities.length} activities were read`);
}
engine.dispose();
const figure = { bench: 'tables', against: 'papaparse alone', unit: 'ms', peer: median(bare) };
const what = `${ROWS.toLocaleString('en')} rows, ${(work.length / 1e6).toFixed(1)} MB of CSV`;
tell({ ...figure, what: `${what} imported`, ours: median(imported) });
tell({ ...figure, what: `${what} to first answer, ${WINDOWS} windows`, ours: median(answered) });
console.log(conditions());

// Text of a CSV file to a table, beside the bare parser on the same text in the same run: the ratio is the figure.
// `node bench/run.mjs tables/read`
import Papa from 'papaparse';
import { readTable, writeCsv } from '../../src/tables/index.js';
import { conditions, median, tell, timed } from '../shared/figures.js';
import { exponent } from '../shared/sizes.js';

const columns = ['activity', 'package', 'title', 'after', 'minutes', 'lines', 'resources', 'note'];

/** Rows as planners write them: short cells, some with commas or quotes, one in fifty with a line break. */
function textOf(rows: number): string {
  const cells = Array.from({ length: rows }, (_, at) => [
    `A${at}`,
    `P${at % 97}`,
    `Relay panel ${at % 13}, cess side`,
    at % 3 === 0 ? '' : `A${at - 1} + 30 min`,
    String(30 + (at % 240)),
    'Up; Down',
    'gang:1; crane:1',
    at % 50 === 0 ? `said "ready"\nby the gang` : '',
  ]);
  return writeCsv(columns, cells);
}

const ROUNDS = 7;

console.log(conditions());
const points = [12_500, 25_000, 50_000, 100_000].map((rows) => {
  const text = textOf(rows);
  const bare: number[] = [];
  const ours: number[] = [];
  // Two rounds that do not count come first: the code of both is compiled in them.
  for (let round = -2; round < ROUNDS; round += 1) {
    const parsed = timed(
      () => Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' }).data.length,
    );
    const table = timed(() => readTable(text).rows.length);
    // The parser also counts the headings, and the end of the last line as a row.
    if (parsed.value !== table.value + 2)
      throw new Error(`${parsed.value} and ${table.value} rows`);
    if (round < 0) continue;
    bare.push(parsed.ms);
    ours.push(table.ms);
  }
  tell({
    bench: 'tables',
    what: `${rows.toLocaleString('en')} rows, ${(text.length / 1e6).toFixed(1)} MB of CSV text to a table`,
    ours: median(ours),
    peer: median(bare),
    against: 'papaparse alone',
    unit: 'ms',
    aim: '<= 2x',
  });
  return { size: rows, value: median(ours) };
});
console.log(`  ours grows by exponent ${exponent(points).toFixed(2)}`);

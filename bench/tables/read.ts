// Text of a CSV file to a table, beside the bare parser on the same text in the same run: the ratio is the figure.
// Run by hand: `npx esbuild bench/tables/read.ts --bundle --platform=node --format=esm | node --input-type=module`.
import Papa from 'papaparse';
import { readTable, writeCsv } from '../../src/tables/index.js';

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

const median = (list: number[]): number => list.sort((a, b) => a - b)[list.length >> 1]!;

for (const rows of [12_500, 25_000, 50_000, 100_000]) {
  const text = textOf(rows);
  const bare: number[] = [];
  const ours: number[] = [];
  let seen = 0;
  for (let round = 0; round < 7; round += 1) {
    const a = performance.now();
    seen += Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' }).data.length;
    const b = performance.now();
    seen += readTable(text).rows.length;
    const c = performance.now();
    bare.push(b - a);
    ours.push(c - b);
  }
  const [floor, time] = [median(bare), median(ours)];
  console.log(
    `${rows} rows, ${(text.length / 1e6).toFixed(1)} MB: parser ${floor.toFixed(0)} ms, table ${time.toFixed(0)} ms, ratio ${(time / floor).toFixed(2)} (${seen})`,
  );
}

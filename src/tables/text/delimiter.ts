export const delimiters = [',', ';', '\t', '|'] as const;

const sampleRecords = 60;
const sampleLength = 200_000;

/**
 * The character that splits a table's cells: the one that gives the most records as many cells as the first has;
 * between equals, the one that gives more cells. Where nothing splits the first record, which may be a title, the one
 * that gives the most records the same number of cells. A comma where nothing splits at all.
 */
export function detectDelimiter(text: string): string {
  const sample = text.slice(0, sampleLength);
  const counted = delimiters.map((delimiter) => ({
    delimiter,
    counts: cellCounts(sample, delimiter),
  }));
  return (
    bestOf(counted, (counts) => counts[0] ?? 1) ??
    bestOf(counted, (counts) => mostCommon(counts.filter((count) => count > 1)) ?? 1) ??
    ','
  );
}

interface Counted {
  readonly delimiter: string;
  readonly counts: readonly number[];
}

function bestOf(
  counted: readonly Counted[],
  cellsOf: (counts: readonly number[]) => number,
): string | undefined {
  let best: { delimiter: string; agree: number; cells: number } | undefined;
  for (const { delimiter, counts } of counted) {
    const cells = cellsOf(counts);
    if (cells < 2) continue;
    const agree = counts.filter((count) => count === cells).length / counts.length;
    if (!best || agree > best.agree || (agree === best.agree && cells > best.cells))
      best = { delimiter, agree, cells };
  }
  return best?.delimiter;
}

function mostCommon(counts: readonly number[]): number | undefined {
  const times = new Map<number, number>();
  for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1);
  return [...times].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0];
}

/** How many cells the first records hold if split at `delimiter`; delimiters and breaks inside quotes do not count. */
function cellCounts(text: string, delimiter: string): number[] {
  const counts: number[] = [];
  let cells = 1;
  let quoted = false;
  let cellStart = true;
  let recordStart = true;
  for (let at = 0; at < text.length && counts.length < sampleRecords; at += 1) {
    const sign = text[at]!;
    if (quoted) {
      if (sign !== '"') continue;
      if (text[at + 1] === '"') at += 1;
      else quoted = false;
    } else if (sign === '\n' || sign === '\r') {
      if (!recordStart) counts.push(cells);
      cells = 1;
      cellStart = recordStart = true;
    } else {
      recordStart = false;
      if (sign === '"' && cellStart) quoted = true;
      cellStart = sign === delimiter;
      if (cellStart) cells += 1;
    }
  }
  if (!recordStart && counts.length < sampleRecords) counts.push(cells);
  return counts;
}

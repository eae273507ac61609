export const delimiters = [',', ';', '\t', '|'] as const;

const sampleRecords = 60;
const sampleLength = 200_000;

/**
 * The character that splits a table's cells: the one that gives the most records as many cells as the first has;
 * between equals, the one that gives more cells. A comma where nothing splits.
 */
export function detectDelimiter(text: string): string {
  let best = { delimiter: ',', agree: 0, cells: 1 };
  for (const delimiter of delimiters) {
    const counts = cellCounts(text.slice(0, sampleLength), delimiter);
    const cells = counts[0] ?? 1;
    if (cells < 2) continue;
    const agree = counts.filter((count) => count === cells).length / counts.length;
    if (agree > best.agree || (agree === best.agree && cells > best.cells))
      best = { delimiter, agree, cells };
  }
  return best.delimiter;
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

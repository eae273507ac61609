// What no railway of this size has. The sample is of 2027; limits are common practice, no source.
import Papa from 'papaparse';

interface Timed {
  readonly window: string | null;
  readonly from?: string;
  readonly to?: string;
}

export interface Printed {
  readonly notes: readonly { readonly code: string; readonly text: string }[];
  readonly windows?: readonly {
    readonly window: string;
    readonly startsAt?: string;
    readonly grossMinutes?: number;
  }[];
  readonly fits?: readonly { readonly placements: readonly (Timed & { activity: string })[] }[];
  readonly placements?: readonly (Timed & { activity: string })[];
}

const longestWindowMinutes = 10 * 1440;
const longestVisitMs = 4 * 86_400_000;
const year = (text: string): number => Number(text.slice(0, 4));

/** Unlikely things in an answer, or in what was read for it, that neither its notes nor what was told names. */
export function oddities(
  answer: Printed,
  files: Readonly<Record<string, string>>,
  told: string,
): string[] {
  const { notes, windows = [], fits = [], placements = [] } = answer;
  const said = `${told}\n${notes.map((note) => note.text).join('\n')}`;
  const odd: string[] = [];
  const add = (name: string, what: string): void => {
    if (!said.includes(name) && !linesOf(name, files).some((line) => said.includes(line)))
      odd.push(`${name} ${what}, and nothing says so`);
  };
  for (const window of windows) {
    if ((window.grossMinutes ?? 0) > longestWindowMinutes)
      add(window.window, `is ${window.grossMinutes} min long`);
    if (window.startsAt && year(window.startsAt) !== 2027)
      add(window.window, `begins in ${year(window.startsAt)}`);
  }
  for (const placement of [...placements, ...fits.flatMap((fit) => fit.placements)]) {
    if (Date.parse(placement.to!) - Date.parse(placement.from!) > longestVisitMs)
      add(placement.activity, `goes on from ${placement.from} to ${placement.to}`);
    if (placement.window !== null && year(placement.from!) !== 2027)
      add(placement.window, `is in ${year(placement.from!)}`);
  }
  for (const [table, text] of Object.entries(files))
    if (!text.startsWith('{')) odd.push(...oddCells(table, text, said));
  return [...new Set(odd)];
}

/** As faults say where they are: the lines of the files that have a cell of some text. */
function linesOf(text: string, files: Readonly<Record<string, string>>): string[] {
  return Object.entries(files).flatMap(([table, content]) =>
    Papa.parse<string[]>(content.startsWith('{') ? '' : content).data.flatMap((row, at) =>
      row.includes(text) ? [`${table}, line ${at + 1},`] : [],
    ),
  );
}

/** Dates years away from the plan's, and more done than there is, where neither row nor cell is named. */
function oddCells(table: string, text: string, said: string): string[] {
  const [head = [], ...rows] = Papa.parse<string[]>(text).data;
  const [units, done] = [head.indexOf('units'), head.indexOf('done')];
  return rows.flatMap((row, at) => {
    const isSaid = (cell: string): boolean =>
      said.includes(`${table}, line ${at + 2}`) || (cell !== '' && said.includes(cell));
    const odd = row.flatMap((cell) => {
      const written = /^(\d{4})-\d\d-\d\d/.exec(cell);
      return written && Math.abs(Number(written[1]) - 2027) > 1 && !isSaid(cell)
        ? [`${table}, line ${at + 2}: ${cell} is years away, and nothing says so`]
        : [];
    });
    if (units >= 0 && done >= 0 && Number(row[done]) > Number(row[units]) && !isSaid(row[1] ?? ''))
      odd.push(`${table}, line ${at + 2}: ${row[done]} of ${row[units]} done, and nothing says so`);
    return odd;
  });
}

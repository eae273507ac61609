// Programs that show a table run a cell that begins with = + - @ as a formula. A leading ' stops that; it is ours to
// put on when writing and to take off when reading, so that a round trip gives back the very same text.

const number = /^[+-]?\d{1,15}(?:\.\d{1,15})?$/;
const controlFirst = /^[\t\r\n\0]/;
const formulaFirst = /^[=+\-@]/;

/** Whether a cell could be run as a formula by a program that opens the file. Plain numbers such as `-12.50` cannot. */
export function looksLikeFormula(text: string): boolean {
  if (text === '' || number.test(text)) return false;
  if (controlFirst.test(text)) return true;
  const start = text.slice(0, 64).replace(/^[\s\p{C}]+/u, '');
  // Full-width and small forms become the plain sign in some programs.
  return formulaFirst.test(start.slice(0, 4).normalize('NFKC'));
}

const quotes = (text: string): number => /^'*/.exec(text)![0].length;

/** The cell as it is safe to write. Text that already looks guarded is guarded once more, so that it too comes back. */
export function guarded(text: string): string {
  return looksLikeFormula(text.slice(quotes(text))) ? `'${text}` : text;
}

/** The cell as it was before `guarded`. `unguarded(guarded(t)) === t` for every text. */
export function unguarded(text: string): string {
  const count = quotes(text);
  return count > 0 && looksLikeFormula(text.slice(count)) ? text.slice(1) : text;
}

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

// A program set to another delimiter or line end splits inside our cells, quotes or not, so that a formula after such a
// sign would begin a cell there. A sum without a call or a command, as `-3 m` or a list's `- check`, does no harm.
const inside =
  /([,;\t|\r\n])((?:(?![\t\r\n])["'\p{Zs}\p{Cc}\p{Cf}])*)(?=[=@＝＠﹦﹫]|[+\-＋－﹢﹣](?=[^,;\t\r\n]*[(|!]))/gu;

/** The cell as it is safe to write. Text that already looks guarded is guarded once more, so that it too comes back. */
export function guarded(text: string): string {
  const safe = text.replace(inside, "$1'$2");
  return looksLikeFormula(safe.slice(quotes(safe))) ? `'${safe}` : safe;
}

/** The cell as it was before `guarded`. `unguarded(guarded(t)) === t` for every text. */
export function unguarded(text: string): string {
  const count = quotes(text);
  const bare = count > 0 && looksLikeFormula(text.slice(count)) ? text.slice(1) : text;
  return bare.replace(inside, (whole, sign: string, lead: string) =>
    lead.startsWith("'") ? sign + lead.slice(1) : whole,
  );
}

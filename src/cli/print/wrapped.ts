// Width and wrapping of text on a terminal.

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });
const ascii = /^[\x20-\x7e]*$/;
/** Characters that take two columns: East Asian wide and full-width ones, and emoji. */
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

const widthOfSign = (sign: string): number => (wide.test(sign) ? 2 : 1);

/** Width of a text on a terminal, in columns. */
export function widthOf(text: string): number {
  if (ascii.test(text)) return text.length;
  let sum = 0;
  for (const { segment } of segmenter.segment(text)) sum += widthOfSign(segment);
  return sum;
}

/** Pads a text with spaces to a width, after it or before it. */
export function padded(text: string, width: number, side: 'left' | 'right' = 'left'): string {
  const blanks = ' '.repeat(Math.max(0, width - widthOf(text)));
  return side === 'left' ? text + blanks : blanks + text;
}

/** Splits a word into pieces that fit a width. */
function pieces(word: string, width: number): string[] {
  if (widthOf(word) <= width) return [word];
  const made = [''];
  for (const { segment } of segmenter.segment(word)) {
    const last = made.length - 1;
    if (made[last] !== '' && widthOf(made[last]! + segment) > width) made.push(segment);
    else made[last]! += segment;
  }
  return made;
}

/**
 * Wraps a text to lines no wider than `width`, between words; a wider word is split.
 *
 * @param hanging Spaces before every line but the first.
 */
export function wrapped(text: string, width: number, hanging = 0): string[] {
  if (widthOf(text) <= width) return [text];
  const indent = Math.min(hanging, Math.floor(width / 2));
  const lines: string[] = [];
  const start = /^ */.exec(text)![0];
  let line = start;
  let empty = true;
  for (const word of text.trim().split(/ +/))
    for (const piece of pieces(word, width - Math.max(indent, start.length))) {
      const next = empty ? line + piece : `${line} ${piece}`;
      if (empty || widthOf(next) <= width) line = next;
      else {
        lines.push(line);
        line = ' '.repeat(indent) + piece;
      }
      empty = false;
    }
  lines.push(line);
  return lines;
}

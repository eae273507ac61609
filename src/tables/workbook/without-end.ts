/** The text without any of some signs at its end, however often; the time it takes grows with the length alone. */
export function withoutEnd(text: string, signs: string): string {
  let end = text.length;
  while (end > 0 && signs.includes(text[end - 1]!)) end -= 1;
  return text.slice(0, end);
}

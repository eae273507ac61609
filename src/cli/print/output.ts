// Output of the command line: cells cannot control the terminal, and a closed pipe ends the program quietly.
import { jsonPieces } from './listed.js';

/** Characters that move the cursor, colour the screen or reverse the text direction, except line breaks. */
const steering =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g;

const written = (character: string): string =>
  `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** Text for a screen, with control characters escaped as `\u001b`. */
export function plainText(text: string): string {
  return text.replace(steering, written);
}

/** JSON with control characters escaped; it parses to the same value. */
export function* jsonText(value: object): Generator<string> {
  for (const piece of jsonPieces(value)) yield piece.replace(steering, written);
  yield '\n';
}

/** Characters of a fault that a reader at a screen still takes in. */
export const longestLine = 600;

/** Truncates a long text and says how much was left out. */
export function clipped(text: string, longest: number): string {
  const plain = plainText(text.replace(/\n/g, ' '));
  if (plain.length <= longest) return plain;
  return `${plain.slice(0, longest)}… (${plain.length - longest} characters more)`;
}

/** How writing ended: done, closed by the reader, or an error. */
export type Written = 'done' | 'closed' | Error;

/** Writes pieces of text to standard output, each after the one before has been written. */
export async function write(pieces: Iterable<string>): Promise<Written> {
  let ended: (error?: Error | null) => void = () => undefined;
  // Never removed: the error of a closed pipe is emitted again after writing has failed.
  process.stdout.on('error', (error) => ended(error));
  for (const piece of pieces) {
    const failure = await new Promise<Error | undefined>((resolve) => {
      ended = (error) => resolve(error ?? undefined);
      process.stdout.write(piece, ended);
    });
    if (!failure) continue;
    return (failure as NodeJS.ErrnoException).code === 'EPIPE' ? 'closed' : failure;
  }
  return 'done';
}

// Nobody reads a closed standard error.
process.stderr.on('error', () => undefined);

/** Erases the unfinished line on a terminal, such as that of `work-line.ts`. */
export const wipeLine = '\r\u001b[K';

/** Writes a line to standard error. */
export function complain(line: string): void {
  process.stderr.write(`${process.stderr.isTTY ? wipeLine : ''}${line}\n`);
}

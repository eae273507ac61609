// What leaves the command line: nothing of a cell steers the terminal, and a reader that goes away ends it quietly.
import { jsonPieces } from './listed.js';

/** The characters that move a cursor, colour a screen or turn the order of letters round. A line break is not one. */
const steering =
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g;

const written = (character: string): string =>
  `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** Text for a screen: what would steer it stands there as `\u001b`. */
export function plainText(text: string): string {
  return text.replace(steering, written);
}

/** JSON in ASCII where a character would steer a screen; it reads back as the same value. */
export function* jsonText(value: object): Generator<string> {
  for (const piece of jsonPieces(value)) yield piece.replace(steering, written);
  yield '\n';
}

/** A line no longer than a person reads, with what was left out said. */
export function clipped(text: string, longest: number): string {
  const plain = plainText(text.replace(/\n/g, ' '));
  if (plain.length <= longest) return plain;
  return `${plain.slice(0, longest)}… (${plain.length - longest} characters more)`;
}

/** How writing ended: all of it, the reader went away, or why not. */
export type Written = 'done' | 'closed' | Error;

/** Writes pieces of text to standard output, each once the one before has gone. */
export async function write(pieces: Iterable<string>): Promise<Written> {
  let ended: (error?: Error | null) => void = () => undefined;
  // Kept to the end: that nobody reads any more is told again after the writing has failed.
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

// A closed standard error has nobody to tell.
process.stderr.on('error', () => undefined);

/** Takes the line that stands unfinished on a terminal away, such as that of `work-line.ts`. */
export const wipeLine = '\r\u001b[K';

/** A line on standard error. */
export function complain(line: string): void {
  process.stderr.write(`${process.stderr.isTTY ? wipeLine : ''}${line}\n`);
}

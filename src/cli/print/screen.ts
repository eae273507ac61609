// Lines for a person, as wide as the screen.
import type { Block } from './blocks.js';
import { columnsOf, layOut } from './layout.js';
import { complain } from './output.js';

/** Text laid out to the width of the screen; `usual` is the width when there is no screen. */
export const onScreen = (
  blocks: readonly Block[],
  stream: NodeJS.WriteStream,
  usual?: number,
): string => layOut(blocks, columnsOf(stream, process.env['COLUMNS']) ?? usual);

/** Writes a line to standard error. */
export const printError = (line: string): void => complain(onScreen([line], process.stderr));

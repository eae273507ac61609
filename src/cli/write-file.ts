import { statSync, writeFileSync } from 'node:fs';
import type { Arguments } from './arguments.js';
import { UsageError } from './errors.js';
import { fileTrouble } from './read/file-trouble.js';
import { fileOptions, type OptionName } from './options.js';

/** The options with a single text value. */
type Paths = {
  readonly [
    K in Exclude<
      OptionName,
      | 'columns'
      | 'isolation'
      | 'loud'
      | 'options'
      | 'strict'
      | 'json'
      | 'minutes'
      | 'weeks'
      | 'seconds'
      | 'seed'
      | 'runs'
      | 'first'
      | 'chance'
    >
  ]?: string;
};

/** Identifies the file behind a path, through hard and symbolic links; `undefined` when there is none. */
function identityOf(path: string | undefined): string | undefined {
  try {
    if (path === undefined || path === '-') return undefined;
    const { dev, ino } = statSync(path, { bigint: true });
    return `${dev} ${ino}`;
  } catch {
    return undefined;
  }
}

/** The files that an option names; some options may be repeated. */
const pathsOf = (asked: Arguments, option: string): readonly (string | undefined)[] => {
  const given = asked[option as keyof Paths];
  return typeof given === 'object' ? given : [given];
};

/**
 * Writes the file that an option names. Does nothing without the option.
 *
 * @throws {UsageError} When it cannot be written, or is an input file.
 */
export function writeFileOf(
  option: 'calendar' | 'out',
  asked: Arguments,
  content: string | Uint8Array,
): void {
  const path = asked[option];
  if (path === undefined) return;
  const target = identityOf(path);
  const input = fileOptions.find(
    (text) =>
      target !== undefined && pathsOf(asked, text).some((each) => identityOf(each) === target),
  );
  if (input !== undefined)
    throw new UsageError(
      `--${option} ${path}: this is the file of --${input}, which would be written over`,
    );
  try {
    writeFileSync(path, content);
  } catch (error) {
    const why = fileTrouble(error, 'there is no such folder');
    throw new UsageError(`--${option} ${path}: ${why}`);
  }
}

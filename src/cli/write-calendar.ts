import { realpathSync, writeFileSync } from 'node:fs';
import { UsageError, type Arguments } from './arguments.js';

const inputs = [
  'windows',
  'work',
  'rules',
  'resources',
  'prices',
  'trains',
  'holidays',
  'roster',
  'forecast',
  'temperatures',
  'plant',
  'site',
  'booking',
  'actuals',
  'decisions',
] as const;

/** Where a path leads over links; `undefined` where nothing is. */
function placeOf(path: string | undefined): string | undefined {
  try {
    return path === undefined ? undefined : realpathSync(path);
  } catch {
    return undefined;
  }
}

/**
 * Writes the calendar file that `--calendar` names; nothing where it names none.
 *
 * @throws {UsageError} When it cannot be written, or is a file that was read.
 */
export function writeCalendar(asked: Arguments, text: string): void {
  const path = asked.calendar;
  if (path === undefined) return;
  const place = placeOf(path);
  const input = inputs.find((option) => place !== undefined && placeOf(asked[option]) === place);
  if (input !== undefined)
    throw new UsageError(
      `--calendar ${path}: this is the file of --${input}, which would be written over`,
    );
  try {
    writeFileSync(path, text);
  } catch (error) {
    const why =
      (error as NodeJS.ErrnoException).code === 'ENOENT'
        ? 'there is no such folder'
        : (error as Error).message;
    throw new UsageError(`--calendar ${path}: ${why}`);
  }
}

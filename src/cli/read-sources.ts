import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { planFrom, type PlanResult, type Source } from '../tables/index.js';
import { UsageError, type Arguments } from './arguments.js';

/** @throws {UsageError} When the file cannot be read. */
export function readFile(path: string, option: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (error) {
    const why =
      (error as NodeJS.ErrnoException).code === 'ENOENT'
        ? 'there is no such file'
        : (error as Error).message;
    throw new UsageError(`--${option} ${path}: ${why}`);
  }
}

/** Reads the files a command line names into a plan. */
export function readSources(asked: Arguments): PlanResult {
  const source = (
    option: 'windows' | 'work' | 'resources' | 'rules' | 'trains',
  ): { [key: string]: Source } => {
    const path = asked[option];
    return path === undefined
      ? {}
      : { [option]: { file: basename(path), content: readFile(path, option) } };
  };
  return planFrom({
    ...(source('windows') as { windows: Source }),
    ...source('work'),
    ...source('resources'),
    ...source('rules'),
    ...source('trains'),
    ...(asked.zone !== undefined && { zone: asked.zone }),
  });
}

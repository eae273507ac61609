import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { withSite } from '../engine/site-plan.js';
import { siteSchema } from '../model/index.js';
import { decodeBytes, jsonFrom, planFrom, type PlanResult, type Source } from '../tables/index.js';
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

type SourceOption =
  | 'windows'
  | 'work'
  | 'resources'
  | 'rules'
  | 'trains'
  | 'roster'
  | 'forecast'
  | 'temperatures'
  | 'plant';

/** Reads the files a command line names into a plan, with what the site asks of it. */
export function readSources(asked: Arguments): PlanResult {
  const limits =
    asked.site === undefined
      ? undefined
      : jsonFrom(
          decodeBytes(readFile(asked.site, 'site')).text,
          basename(asked.site),
          'site',
          siteSchema,
        );
  const source = (option: SourceOption): { [key: string]: Source } => {
    const path = asked[option];
    return path === undefined
      ? {}
      : { [option]: { file: basename(path), content: readFile(path, option) } };
  };
  const read = planFrom({
    ...(source('windows') as { windows: Source }),
    ...source('work'),
    ...source('resources'),
    ...source('rules'),
    ...source('trains'),
    ...source('roster'),
    ...source('forecast'),
    ...source('temperatures'),
    ...source('plant'),
    ...(limits?.value && { site: limits.value }),
    ...(asked.zone !== undefined && { zone: asked.zone }),
  });
  return withSite({ ...read, faults: [...read.faults, ...(limits?.faults ?? [])] });
}

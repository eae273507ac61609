import { closeSync, openSync, readSync } from 'node:fs';
import { basename } from 'node:path';
import { withSite } from '../../engine/site/site-plan.js';
import { headingAt } from '../../engine/import/source.js';
import { siteSchema, type Fault, type TableKind } from '../../model/index.js';
import {
  decodeBytes,
  guessKind,
  jsonFrom,
  looksLikeArchive,
  planFrom,
  tableOfRecords,
  tooManyBytes,
  type DateOrder,
  type PlanResult,
  type Source,
  type WorkbookSheet,
} from '../../tables/index.js';
import { fileTrouble } from './file-trouble.js';
import { problemText } from './read-problems.js';
import type { Arguments } from '../arguments.js';
import { UsageError } from '../errors.js';

/** Stops at the size limit, since a device may never end. */
function bytesOf(path: string): Uint8Array {
  const standardInput = 0;
  const file = path === '-' ? standardInput : openSync(path, 'r');
  try {
    const pieces: Uint8Array[] = [];
    for (let length = 0; ;) {
      const piece = new Uint8Array(1024 * 1024);
      const got = readSome(file, piece);
      if (got === 0) return Buffer.concat(pieces);
      pieces.push(piece.subarray(0, got));
      length += got;
      const large = tooManyBytes(length);
      if (large) throw new Error(problemText(large));
    }
  } finally {
    if (file !== standardInput) closeSync(file);
  }
}

/** Reads bytes and returns how many; 0 at the end. Waits for a standard input that has no data yet. */
function readSome(file: number, piece: Uint8Array): number {
  for (;;) {
    try {
      return readSync(file, piece);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

/** The name of a file in faults. */
export function fileName(path: string): string {
  return path === '-' ? 'standard input' : basename(path);
}

/** @throws {UsageError} When the file cannot be read or is too large. */
export function readFile(path: string, option: string): Uint8Array {
  try {
    return bytesOf(path);
  } catch (error) {
    throw new UsageError(`--${option} ${path}: ${fileTrouble(error, 'there is no such file')}`);
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

interface ReadTable {
  readonly source: Source;
  readonly faults: readonly Fault[];
}

/** The table in a workbook: from the sheet named like the option, otherwise from the first sheet with such a table. */
async function sheetFor(option: TableKind, file: string, bytes: Uint8Array): Promise<ReadTable> {
  const { readWorkbook } = await import('../../tables/workbook/read-workbook.js');
  const { sheets, faults } = await readWorkbook(bytes);
  const holds = (sheet: WorkbookSheet): boolean =>
    sheet.rows.some((row) => guessKind(row.cells) === option);
  const sheet =
    sheets.find((item) => item.name.trim().toLowerCase() === option) ??
    sheets.find((item) => !item.hidden && holds(item)) ??
    sheets.find((item) => !item.hidden && item.rows.length > 0);
  if (!sheet)
    return { source: { file, content: '' }, faults: faults.map((fault) => ({ ...fault, file })) };
  return {
    source: {
      file: `${file}, sheet ${sheet.name}`,
      content: tableOfRecords(sheet, headingAt(sheet)),
    },
    faults: [],
  };
}

/** Reads the files of a command line into a plan, site limits included. Tables may be workbooks. */
export async function readSources(asked: Arguments): Promise<PlanResult> {
  const limits =
    asked.site === undefined
      ? undefined
      : jsonFrom(
          decodeBytes(readFile(asked.site, 'site')).text,
          fileName(asked.site),
          'site',
          siteSchema,
        );
  const refused: Fault[] = [];
  const source = async (option: SourceOption): Promise<{ [key: string]: Source }> => {
    const path = asked[option];
    if (path === undefined) return {};
    const [file, content] = [fileName(path), readFile(path, option)];
    if (option === 'rules' || !looksLikeArchive(content)) return { [option]: { file, content } };
    const read = await sheetFor(option, file, content);
    refused.push(...read.faults);
    return { [option]: read.source };
  };
  const read = planFrom({
    ...((await source('windows')) as { windows: Source }),
    ...(await source('work')),
    ...(await source('resources')),
    ...(await source('rules')),
    ...(await source('trains')),
    ...(await source('roster')),
    ...(await source('forecast')),
    ...(await source('temperatures')),
    ...(await source('plant')),
    ...(limits?.value && { site: limits.value }),
    columns: asked.columns,
    ...(asked.dates !== undefined && { dateOrder: asked.dates as DateOrder }),
    ...(asked.zone !== undefined && { zone: asked.zone }),
  });
  return withSite({ ...read, faults: [...refused, ...read.faults, ...(limits?.faults ?? [])] });
}

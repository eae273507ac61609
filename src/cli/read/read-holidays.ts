import { localDateSchema, type Fault, type Problem } from '../../model/index.js';
import { decodeBytes } from '../../tables/index.js';
import { readProblem } from './read-problems.js';
import { fileName, readFile } from './read-sources.js';

interface Written {
  readonly text: string;
  readonly line?: number;
}

/**
 * Reads local dates of public holidays: one date per line, without blank lines and comments from `#`, or a JSON array
 * of strings. A date given twice counts once.
 *
 * @throws {UsageError} When the file cannot be read.
 */
export function readHolidays(path: string): {
  readonly holidays: readonly string[];
  readonly faults: readonly Fault[];
} {
  const file = fileName(path);
  const fault = (problem: Problem, line?: number): Fault => ({
    ...problem,
    ...{ severity: 'error', file },
    ...(line !== undefined && { line }),
  });
  const text = decodeBytes(readFile(path, 'holidays')).text.replace(/^\uFEFF/, '');
  const written = /^\s*[[{"]/.test(text) ? fromJson(text) : fromLines(text);
  if (!written) return { holidays: [], faults: [fault(readProblem('holidays-json'))] };
  const bad = written.filter((item) => !localDateSchema.safeParse(item.text).success);
  return {
    holidays: [...new Set(written.map((item) => item.text))],
    faults: bad.map(({ text, line }) => fault(readProblem('holiday-date', { text }), line)),
  };
}

function fromLines(text: string): readonly Written[] {
  return text
    .split(/\r\n|\r|\n/)
    .map((each, index) => ({ text: each.split('#', 1)[0]!.trim(), line: index + 1 }))
    .filter((item) => item.text !== '');
}

function fromJson(text: string): readonly Written[] | undefined {
  try {
    const read: unknown = JSON.parse(text);
    if (!Array.isArray(read)) return undefined;
    return read.map((item) => ({ text: typeof item === 'string' ? item : JSON.stringify(item) }));
  } catch {
    return undefined;
  }
}

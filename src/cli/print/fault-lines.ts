import { faultText } from '../../engine/english/problems.js';
import type { Fault } from '../../model/index.js';
import { allProblems } from '../read/read-problems.js';
import { clipped, longestLine } from './output.js';

const mostLines = 500;
/** Warnings of one cause that get their own line; the rest share one line. */
const oneByOne = 3;

/**
 * The lines of faults, in order. Every error has its own line. Of warnings of one cause in one column, the first few
 * have their own; one line lists where the rest are.
 */
export function faultLines(faults: readonly Fault[]): string[] {
  const alike = new Map<string, { count: number; readonly rest: Fault[] }>();
  const kept = faults.flatMap((fault) => {
    if (fault.severity === 'error') return [{ fault, rest: [] }];
    const cause = causeOf(fault);
    const group = alike.get(cause) ?? { count: 0, rest: [] };
    alike.set(cause, group);
    group.count += 1;
    if (group.count > oneByOne) {
      group.rest.push(fault);
      return [];
    }
    return [{ fault, rest: group.count === oneByOne ? group.rest : [] }];
  });
  const lines = kept
    .slice(0, mostLines)
    .flatMap(({ fault, rest }) => [
      `${fault.severity}: ${clipped(faultText(fault, allProblems), longestLine)}`,
      ...(rest.length === 0 ? [] : [restText(rest)]),
    ]);
  const more = kept.slice(mostLines).map((item) => item.fault);
  const errors = more.filter((fault) => fault.severity === 'error').length;
  return more.length === 0
    ? lines
    : [
        ...lines,
        `${more.length} more, ${errors} of them errors. Mend these first, then run it again.`,
      ];
}

const causeOf = ({ code, file, column = '' }: Fault): string =>
  JSON.stringify([code, file, column]);

/** `warning: trains.csv, column "window": 82 more like these, on lines 5-83, 90.` */
function restText(rest: readonly Fault[]): string {
  const { file, column } = rest[0]!;
  const at = rest.flatMap(({ line }) => line ?? []);
  const lines = at.length === 0 ? '' : `, on line${at.length === 1 ? '' : 's'} ${runsOf(at)}`;
  const where = column === undefined ? file : `${file}, column "${column}"`;
  return clipped(
    `warning: ${where}: ${rest.length} more like ${rest.length === 1 ? 'it' : 'these'}${lines}.`,
    longestLine,
  );
}

/** Sorted whole numbers as text, consecutive ones as a range `5-83`. */
function runsOf(numbers: readonly number[]): string {
  const runs: [from: number, to: number][] = [];
  for (const each of numbers.toSorted((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && each <= last[1] + 1) last[1] = each;
    else runs.push([each, each]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(', ');
}

import { extname } from 'node:path';
import { english } from '../engine/english/say.js';
import { planOutFile, planFormats } from '../engine/plan-out/plan-file.js';
import type { PlanOut } from '../engine/plan-out/plan-sheets.js';
import type { Arguments } from './arguments.js';
import { complain } from './print/output.js';
import { readMoment } from './read/read-moment.js';
import { problemWords } from './read/read-problems.js';
import { fileName } from './read/read-sources.js';
import { writeFileOf } from './write-file.js';

/** The names of the input files of a plan, for its heading. */
export const documentOf = ({ windows, work }: Arguments): string =>
  [windows, ...(work === undefined ? [] : [work])].map(fileName).join(', ');

/**
 * Writes the plan of work to the file of `--out`, in the format of its extension. Does nothing without `--out`.
 *
 * @throws {UsageError} When it cannot be written, or is an input file.
 */
export async function writePlan(asked: Arguments, out: PlanOut): Promise<void> {
  const ending = extname(asked.out ?? '')
    .slice(1)
    .toLowerCase();
  const format = planFormats.find((text) => text === ending);
  if (!format) return;
  const now = asked.at === undefined ? Date.now() : readMoment(asked.at, 'at', out.plan.zone);
  const file = await planOutFile(out, format, now, english);
  for (const fault of file.faults) complain(`warning: ${problemWords(fault)[0]}`);
  writeFileOf('out', asked, file.bytes);
}

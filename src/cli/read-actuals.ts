import { addMinutes, type Instant } from '../calendar/index.js';
import { unitsLeft, type Fault, type Plan } from '../model/index.js';
import {
  grantStep,
  handedBackStep,
  lineGrantStep,
  readShiftLog,
  shiftState,
  type Actual,
  type Stage,
} from '../risk/index.js';
import { inShift } from './shift-windows.js';
import { actualsFrom, decodeBytes, readTable } from '../tables/index.js';
import { fileName, readFile } from './read-sources.js';

/** Nothing of a shift happens longer before its window opens, in minutes. */
const HALF_DAY = 720;

/** Every step of the rules and where it stands. */
function stepsOf(
  { rules }: Plan,
  lines: Iterable<string>,
): ReadonlyMap<string, ReadonlySet<Stage>> {
  const steps = new Map<string, Set<Stage>>([
    [grantStep, new Set(['lead-in'])],
    [handedBackStep, new Set(['lead-out'])],
    ...[...lines].map((step) => [step, new Set<Stage>(['lead-in'])] as const),
  ]);
  for (const [stage, list] of [
    ['lead-in', rules.leadIn],
    ['lead-out', rules.leadOut],
  ] as const)
    for (const { step } of list) steps.set(step, new Set([...(steps.get(step) ?? []), stage]));
  return steps;
}

/**
 * What was seen during a shift: a table with a row an activity or a step, or the log of a shift as it was saved (JSON),
 * as it stood at `at`.
 *
 * @throws {UsageError} When the file cannot be read.
 */
export function readActuals(
  path: string,
  plan: Plan,
  at: Instant,
): { actuals: readonly Actual[]; faults: readonly Fault[] } {
  const file = fileName(path);
  const { text } = decodeBytes(readFile(path, 'actuals'));
  if (text.trimStart().startsWith('{')) {
    const read = readShiftLog(text);
    const said = shiftState(read.log, at);
    const fault = (
      code: string,
      severity: Fault['severity'],
      message: string,
      mend: string,
    ): Fault => ({ code, severity, file, message, mend });
    return {
      actuals: said.actuals,
      faults: [
        ...read.faults.map((one) =>
          fault('log-not-read', 'error', one, 'Save the log anew from the device it is kept on.'),
        ),
        ...said.faults.map((one) =>
          fault(one.code, 'warning', `Entry ${one.entry}: ${one.text}`, 'Correct it in the log.'),
        ),
      ],
    };
  }
  const lines = new Map(
    plan.windows.flatMap((one) => one.lines.map((line) => [line, lineGrantStep(line)] as const)),
  );
  const open = inShift(plan.windows, at);
  return actualsFrom(readTable(text), {
    file,
    zone: plan.zone,
    activities: new Map(
      plan.activities.map(({ id, work }) => [id, work.kind === 'units' ? unitsLeft(work) : null]),
    ),
    steps: stepsOf(plan, lines.values()),
    lines,
    handedBack: handedBackStep,
    notBefore:
      open.length === 0
        ? -Infinity
        : addMinutes(Math.min(...open.map((one) => one.start)), -HALF_DAY),
  });
}

import { addMinutes, isoText, type Instant } from '../../calendar/index.js';
import { unitsLeft, type Fault, type Plan, type Problem } from '../../model/index.js';
import {
  begunBy,
  grantStep,
  handedBackStep,
  lineGrantStep,
  readShiftLog,
  shiftState,
  type Actual,
  type Stage,
} from '../../risk/index.js';
import { inShift } from './shift-windows.js';
import { actualsFrom, decodeBytes, readTable } from '../../tables/index.js';
import { readProblem } from './read-problems.js';
import { fileName, readFile } from './read-sources.js';

/** How long before its window a shift may have its first entry, in minutes. */
const HALF_DAY = 720;

/** Every step of the rules, and whether it is in the lead-in, the lead-out or both. */
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

/** Records of the current shift and of earlier ones. */
export interface ReadActuals {
  readonly actuals: readonly Actual[];
  readonly begunBefore: readonly string[];
  readonly faults: readonly Fault[];
}

/**
 * Reads the records of a shift up to `at`: a table with a row for each activity or step, or a saved log (JSON). Other
 * files may be logs of earlier shifts; of these only the begun work counts.
 *
 * @throws {UsageError} When a file cannot be read.
 */
export function readActuals(paths: readonly string[], plan: Plan, at: Instant): ReadActuals {
  const all = paths.map((path) => readActualsFile(path, plan, at));
  const own = all.filter((file) => !file.earlier);
  return {
    actuals: own.flatMap((file) => file.actuals),
    begunBefore: all.flatMap((file) =>
      file.earlier ? begunBy(plan.activities, file.actuals, at) : [],
    ),
    faults: [
      ...all.flatMap((file) => file.faults),
      ...own.slice(1).map(({ file }): Fault => ({
        ...readProblem('shift-twice', { other: own[0]!.file }),
        severity: 'error',
        file,
      })),
    ],
  };
}

interface ReadFile {
  readonly file: string;
  /** Whether it is the log of a window that is not open at `at`. */
  readonly earlier: boolean;
  readonly actuals: readonly Actual[];
  readonly faults: readonly Fault[];
}

function readLog(text: string, file: string, plan: Plan, at: Instant): ReadFile {
  const read = readShiftLog(text);
  const said = shiftState(read.log, at);
  const fault = (severity: Fault['severity'], problem: Problem): Fault => ({
    ...problem,
    severity,
    file,
  });
  const { window: id, start } = read;
  const earlier =
    id !== null &&
    !inShift(plan.windows, at).some(
      (window) => window.id === id && (start === null || start === window.start),
    );
  return {
    file,
    earlier,
    actuals: said.actuals,
    faults: [
      ...read.faults.map((problem) => fault('error', problem)),
      ...said.faults.map(({ code, entry, text }) =>
        fault('warning', { ...readProblem('log-entry', { entry, text }), code }),
      ),
      ...(earlier
        ? [
            fault(
              'warning',
              readProblem('log-of-another-shift', {
                window: id,
                day: start === null ? undefined : isoText(start, plan.zone).slice(0, 10),
              }),
            ),
          ]
        : []),
    ],
  };
}

function readActualsFile(path: string, plan: Plan, at: Instant): ReadFile {
  const file = fileName(path);
  const { text } = decodeBytes(readFile(path, 'actuals'));
  if (text.trimStart().startsWith('{')) return readLog(text, file, plan, at);
  const lines = new Map(
    plan.windows.flatMap((window) =>
      window.lines.map((line) => [line, lineGrantStep(line)] as const),
    ),
  );
  const open = inShift(plan.windows, at);
  const read = actualsFrom(readTable(text), {
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
        : addMinutes(Math.min(...open.map((window) => window.start)), -HALF_DAY),
  });
  return { file, earlier: false, ...read };
}

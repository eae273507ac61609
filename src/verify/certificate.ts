import { endOf, type Job } from './work.js';
import { smallPlans } from './small-search.js';
import { duesOf, type Due } from './dues.js';
import type { ClaimedCertificate, ClaimedValue, PlanAnswer, ReportFault } from './types.js';
import type { Ledgers } from './usable.js';
import { MINUTE, type Instant, type Plan } from './plan-types.js';
import { say } from './say.js';

/** Recalculates the claims about the whole plan from its placements. */
export function checkTotals(
  plan: Plan,
  jobs: ReadonlyMap<string, Job>,
  ledgers: Ledgers,
  answer: PlanAnswer,
  holds: boolean,
  report: ReportFault,
): void {
  const { finishesAt, windowsUsed, certificate } = answer;
  const finish = lastEnd(jobs);
  const windows = windowsOf(jobs);
  if (finishesAt !== undefined && finishesAt !== finish)
    report({ code: 'finishes-at', text: say('finish-not-last-end') });
  if (windowsUsed !== undefined && windowsUsed !== windows.size)
    report({
      code: 'windows-used',
      text: say('windows-stated', { stated: windowsUsed, used: windows.size }),
    });
  if (!certificate) return;
  const values = valuesOf(plan, jobs);
  // A plan without placements proves nothing.
  const isWhole = holds && answer.placements.length > 0 && answer.unplaced?.length === 0;
  checkObjectives(certificate, values, isWhole, report);
  if (holds && answer.placements.length > 0)
    checkBest(plan, values, answer, certificate, ledgers, report);
}

function windowsOf(jobs: ReadonlyMap<string, Job>): ReadonlySet<string> {
  const windows = new Set<string>();
  for (const { pieces } of jobs.values())
    for (const { window } of pieces) if (window !== null) windows.add(window);
  return windows;
}

function valuesOf(plan: Plan, jobs: ReadonlyMap<string, Job>): Readonly<Record<string, number>> {
  return {
    'key-dates': minutesLate(duesOf(jobs)),
    // The margin is outside the usable time, so no piece can use it.
    margins: 0,
    finish: finishMinutes(plan, lastEnd(jobs)),
    'fewest-windows': windowsOf(jobs).size,
  };
}

/** Compares claims of optimality with the plans found by the check's own small search. */
function checkBest(
  plan: Plan,
  values: Readonly<Record<string, number>>,
  { unplaced = [] }: PlanAnswer,
  { objectives, mostPlaced }: ClaimedCertificate,
  ledgers: Ledgers,
  report: ReportFault,
): void {
  const open = objectives.findIndex((objective) => !objective.proven);
  const proven = open < 0 ? objectives : objectives.slice(0, open);
  const isPartial = unplaced.length > 0;
  if (isPartial ? !mostPlaced : proven.length === 0) return;
  for (const jobs of smallPlans(plan, ledgers)) {
    const theirs = valuesOf(plan, jobs);
    const other = proven.find(({ name }) => theirs[name] !== values[name]);
    if (isPartial || (other && theirs[other.name]! < values[other.name]!)) {
      const text = isPartial
        ? say('all-can-be-placed')
        : say('better-plan-found', {
            aim: other!.name,
            theirs: theirs[other!.name]!,
            stated: values[other!.name]!,
          });
      report({ code: 'proven', text });
      return;
    }
  }
}

function lastEnd(jobs: ReadonlyMap<string, Job>): Instant | null {
  let last = Number.NEGATIVE_INFINITY;
  for (const job of jobs.values()) last = Math.max(last, endOf(job));
  return Number.isFinite(last) ? last : null;
}

/** Total minutes late over all key dates; of partly placed work, of the placed part. */
function minutesLate(dues: readonly Due[]): number {
  let sum = 0;
  for (const { due, jobs } of dues) {
    const late = Math.max(...jobs.map(endOf)) - due;
    if (late > 0) sum += Math.ceil(late / MINUTE);
  }
  return sum;
}

/** Start of the plan: the start of the first window that takes work, in whole minutes. */
export function startOfPlan(plan: Plan): Instant {
  const open = plan.windows.filter((window) => window.status !== 'withdrawn');
  let start = Number.POSITIVE_INFINITY;
  for (const window of open.length > 0 ? open : plan.windows) start = Math.min(start, window.start);
  return Number.isFinite(start) ? Math.floor(start / MINUTE) * MINUTE : 0;
}

/** Minutes from the start of the plan to the last finish; 0 when that is earlier. */
function finishMinutes(plan: Plan, finish: Instant | null): number {
  if (finish === null) return 0;
  return Math.max(0, Math.ceil((finish - startOfPlan(plan)) / MINUTE));
}

function checkObjectives(
  certificate: ClaimedCertificate,
  values: Readonly<Record<string, number>>,
  isWhole: boolean,
  report: ReportFault,
): void {
  const { objectives } = certificate;
  const names = objectives.map((objective) => objective.name);
  if (names.toSorted().join() !== Object.keys(values).sort().join())
    report({ code: 'objective', text: say('values-told', { names }) });
  for (const objective of objectives) {
    const value = values[objective.name];
    if (value !== undefined && objective.value !== value)
      report({
        code: 'objective',
        text: say('value-stated', { aim: objective.name, stated: objective.value, value }),
      });
    checkBound(objective, isWhole, report);
  }
  const [first] = objectives;
  if (
    first &&
    (certificate.objective !== first.value ||
      certificate.lowerBound !== first.lowerBound ||
      certificate.proven !== first.proven)
  )
    report({ code: 'objective', text: say('first-value-two-ways') });
  checkWords(certificate, report);
}

/** `proven best` at the end of the text claims it for every value; followed by more text, for the first value only. */
function checkWords({ text, objectives }: ClaimedCertificate, report: ReportFault): void {
  if (!text.includes('proven')) return;
  const spoken = text.endsWith('proven best') ? objectives : objectives.slice(0, 1);
  if (!spoken.every((value) => value.proven))
    report({ code: 'proven', text: say('words-not-values', { text }) });
}

/** `isWhole`: all is placed without faults, so a bound equal to the value proves it. */
function checkBound(
  { name, value, lowerBound, proven }: ClaimedValue,
  isWhole: boolean,
  report: ReportFault,
): void {
  if (!(lowerBound <= value))
    report({
      code: 'bound',
      text: say('bound-above-value', { aim: name, bound: lowerBound, value }),
    });
  if (proven && lowerBound !== value)
    report({
      code: 'proven',
      text: say('proven-but-better', { aim: name, by: value - lowerBound }),
    });
  if (!proven && lowerBound === value && value > 0 && isWhole)
    report({
      code: 'bound',
      text: say('bound-proves', { aim: name }),
    });
}

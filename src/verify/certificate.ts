import { endOf, type Job } from './work.js';
import { smallPlans } from './better.js';
import { duesOf, type Due } from './dues.js';
import type { ClaimedCertificate, ClaimedValue, PlanAnswer, Tell } from './types.js';
import type { Ledgers } from './usable.js';
import { MINUTE, type Instant, type Plan } from './words.js';

/** What is said of the plan as a whole, reckoned again from the placements. */
export function checkTotals(
  plan: Plan,
  jobs: ReadonlyMap<string, Job>,
  ledgers: Ledgers,
  answer: PlanAnswer,
  holds: boolean,
  tell: Tell,
): void {
  const { finishesAt, windowsUsed, certificate } = answer;
  const finish = lastEnd(jobs);
  const windows = windowsOf(jobs);
  if (finishesAt !== undefined && finishesAt !== finish)
    tell({ code: 'finishes-at', text: 'the finish that is told is not the end of the last piece' });
  if (windowsUsed !== undefined && windowsUsed !== windows.size)
    tell({
      code: 'windows-used',
      text: `${windowsUsed} windows are told as used, and ${windows.size} are`,
    });
  if (!certificate) return;
  const values = valuesOf(plan, jobs);
  // Of a plan in which nothing is placed nothing is proven.
  const isWhole = holds && answer.placements.length > 0 && answer.unplaced?.length === 0;
  checkObjectives(certificate, values, isWhole, tell);
  if (holds && answer.placements.length > 0)
    checkBest(plan, values, answer, certificate, ledgers, tell);
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
    // The margin lies outside the usable time, where no piece may be.
    margins: 0,
    finish: finishMinutes(plan, lastEnd(jobs)),
    'fewest-windows': windowsOf(jobs).size,
  };
}

/** What is told as proven holds against the plans that a small search of the check's own finds. */
function checkBest(
  plan: Plan,
  values: Readonly<Record<string, number>>,
  { unplaced = [] }: PlanAnswer,
  { objectives, mostPlaced }: ClaimedCertificate,
  ledgers: Ledgers,
  tell: Tell,
): void {
  const open = objectives.findIndex((objective) => !objective.proven);
  const proven = open < 0 ? objectives : objectives.slice(0, open);
  const isPartial = unplaced.length > 0;
  if (isPartial ? !mostPlaced : proven.length === 0) return;
  for (const jobs of smallPlans(plan, ledgers)) {
    const theirs = valuesOf(plan, jobs);
    const other = proven.find(({ name }) => theirs[name] !== values[name]);
    if (isPartial || (other && theirs[other.name]! < values[other.name]!)) {
      const what = isPartial
        ? 'all work can be placed'
        : `${other!.name} can be ${theirs[other!.name]} where ${values[other!.name]} is told`;
      tell({ code: 'proven', text: `the check found a better plan: ${what}` });
      return;
    }
  }
}

function lastEnd(jobs: ReadonlyMap<string, Job>): Instant | null {
  let last = Number.NEGATIVE_INFINITY;
  for (const job of jobs.values()) last = Math.max(last, endOf(job));
  return Number.isFinite(last) ? last : null;
}

/** Minutes late at each key date, added up; of work that is placed in part, of that part. */
function minutesLate(dues: readonly Due[]): number {
  let sum = 0;
  for (const { due, jobs } of dues) {
    const late = Math.max(...jobs.map(endOf)) - due;
    if (late > 0) sum += Math.ceil(late / MINUTE);
  }
  return sum;
}

/** Moment zero: the start of the first window that takes work, in whole minutes. */
export function startOfPlan(plan: Plan): Instant {
  const open = plan.windows.filter((window) => window.status !== 'withdrawn');
  let start = Number.POSITIVE_INFINITY;
  for (const window of open.length > 0 ? open : plan.windows) start = Math.min(start, window.start);
  return Number.isFinite(start) ? Math.floor(start / MINUTE) * MINUTE : 0;
}

/** From the start of the plan to the last finish; 0 where that is before it. */
function finishMinutes(plan: Plan, finish: Instant | null): number {
  if (finish === null) return 0;
  return Math.max(0, Math.ceil((finish - startOfPlan(plan)) / MINUTE));
}

function checkObjectives(
  certificate: ClaimedCertificate,
  values: Readonly<Record<string, number>>,
  isWhole: boolean,
  tell: Tell,
): void {
  const { objectives } = certificate;
  const names = objectives.map((objective) => objective.name);
  if (names.toSorted().join() !== Object.keys(values).sort().join())
    tell({ code: 'objective', text: `the values told are ${names.join(', ')}` });
  for (const objective of objectives) {
    const value = values[objective.name];
    if (value !== undefined && objective.value !== value)
      tell({
        code: 'objective',
        text: `${objective.name} is told as ${objective.value} and is ${value}`,
      });
    checkBound(objective, isWhole, tell);
  }
  const [first] = objectives;
  if (
    first &&
    (certificate.objective !== first.value ||
      certificate.lowerBound !== first.lowerBound ||
      certificate.proven !== first.proven)
  )
    tell({ code: 'objective', text: 'the first value is told in two ways' });
  checkWords(certificate, tell);
}

/** `proven best` at the end of the words speaks of every value, before more words of the first; whatever stands before. */
function checkWords({ text, objectives }: ClaimedCertificate, tell: Tell): void {
  if (!text.includes('proven')) return;
  const spoken = text.endsWith('proven best') ? objectives : objectives.slice(0, 1);
  if (!spoken.every((value) => value.proven))
    tell({ code: 'proven', text: `"${text}" is not what the values say` });
}

/** `isWhole`: all is placed and the pieces hold, so that a bound equal to the value proves it. */
function checkBound(
  { name, value, lowerBound, proven }: ClaimedValue,
  isWhole: boolean,
  tell: Tell,
): void {
  if (!(lowerBound <= value))
    tell({ code: 'bound', text: `${name}: the bound ${lowerBound} is above the value ${value}` });
  if (proven && lowerBound !== value)
    tell({
      code: 'proven',
      text: `${name} is told as proven and may be better by ${value - lowerBound}`,
    });
  if (!proven && lowerBound === value && value > 0 && isWhole)
    tell({ code: 'bound', text: `${name} has a bound that proves it, and is not told as proven` });
}

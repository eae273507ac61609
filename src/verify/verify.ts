// Checks a plan of work, and what is claimed of it, against the plan document alone. It shares no code with the search, the
// rules or the calendar: a mistake there must not hide itself here.
import { checkAmounts } from './amounts.js';
import { checkTotals } from './certificate.js';
import { clockOf } from './clock.js';
import { checkComplete, checkKnown } from './complete.js';
import { checkFloats } from './floats.js';
import { duesOf } from './dues.js';
import { checkKeyDates } from './key-dates.js';
import { checkLineState } from './line-state.js';
import { checkOrder } from './order.js';
import { PushOn } from './push-on.js';
import { checkSamePlace } from './same-place.js';
import { Spare } from './spare.js';
import { checkSupplies } from './supplies.js';
import type { PlanAnswer, PlanFault, Tell } from './types.js';
import { checkUnstated } from './unstated.js';
import { Ledgers } from './usable.js';
import { checkWhere } from './where.js';
import type { Plan } from './words.js';
import { jobsOf } from './work.js';

/**
 * Everything in which an answer breaks the plan or says more than is so; empty where it holds.
 *
 * Of `placements` everything is asked; of what else the answer claims, only what is there. O(n log n) in pieces and in the
 * edges of the time they lie in, but for pairs of work at one place and minute.
 *
 * @param ledgers Of a plan with these windows and rules, where they were asked for before.
 */
export function verify(
  plan: Plan,
  answer: PlanAnswer,
  ledgers: Ledgers = new Ledgers(plan),
): PlanFault[] {
  const faults: PlanFault[] = [];
  const report: Tell = (fault) => void faults.push(fault);
  const { jobs, strangers } = jobsOf(plan, answer.placements);
  checkKnown(strangers, report);
  for (const job of jobs.values()) checkAmounts(job, report);
  checkWhere(plan, jobs, ledgers, report);
  checkOrder(plan, jobs, report);
  checkSupplies(plan.resources, jobs, clockOf(plan.zone), report);
  checkLineState(jobs, report);
  const unsaid = checkSamePlace(jobs, report);

  const { unplaced, unstated, keyDates, floats } = answer;
  const dues = duesOf(jobs);
  if (unplaced) checkComplete(jobs, unplaced, report);
  if (unstated) checkUnstated(jobs, unsaid, unstated, report);
  if (keyDates) checkKeyDates(dues, keyDates, new PushOn(plan, jobs, ledgers, dues), report);
  checkTotals(plan, jobs, ledgers, answer, faults.length === 0, report);
  if (floats) {
    const spare = new Spare(plan, jobs, clockOf(plan.zone));
    checkFloats({ plan, jobs, ledgers, spare }, floats, report);
  }
  return faults;
}

// Checks a plan of work, and what is claimed of it, against the plan document alone. It shares no code with the search,
// the rules or the calendar, so that a mistake there cannot hide here.
import { checkAmounts } from './amounts.js';
import { checkTotals } from './certificate.js';
import { clockOf } from './clock.js';
import { checkComplete, checkKnown } from './complete.js';
import { checkFloats } from './floats.js';
import { duesOf } from './dues.js';
import { checkKeyDates } from './key-dates.js';
import { checkLineState } from './line-state.js';
import { checkOrder } from './order.js';
import { DelayBound } from './delay-bound.js';
import { checkSamePlace } from './same-place.js';
import { Spare } from './spare.js';
import { checkSupplies } from './supplies.js';
import type { PlanAnswer, PlanFault, ReportFault } from './types.js';
import { checkUnstated } from './unstated.js';
import { Ledgers } from './usable.js';
import { checkWhere } from './where.js';
import type { Plan } from './plan-types.js';
import { jobsOf } from './work.js';

/**
 * All faults of an answer: rules it breaks and claims that are too large. Empty when it holds.
 *
 * `placements` are always checked in full; other claims only when present. O(n log n) in pieces and in edges of usable
 * time, plus the pairs of work at the same place and time.
 *
 * @param ledgers Ledgers of a plan with the same windows and rules, to reuse.
 */
export function verify(
  plan: Plan,
  answer: PlanAnswer,
  ledgers: Ledgers = new Ledgers(plan),
): PlanFault[] {
  const faults: PlanFault[] = [];
  const report: ReportFault = (fault) => void faults.push(fault);
  const { jobs, unknownPieces } = jobsOf(plan, answer.placements);
  checkKnown(unknownPieces, report);
  for (const job of jobs.values()) checkAmounts(job, report);
  checkWhere(plan, jobs, ledgers, report);
  checkOrder(plan, jobs, report);
  checkSupplies(plan.resources, jobs, clockOf(plan.zone), report);
  checkLineState(jobs, report);
  const unstatedPairs = checkSamePlace(jobs, report);

  const { unplaced, unstated, keyDates, floats } = answer;
  const dues = duesOf(jobs);
  if (unplaced) checkComplete(jobs, unplaced, report);
  if (unstated) checkUnstated(jobs, unstatedPairs, unstated, report);
  if (keyDates) checkKeyDates(dues, keyDates, new DelayBound(plan, jobs, ledgers, dues), report);
  checkTotals(plan, jobs, ledgers, answer, faults.length === 0, report);
  if (floats) {
    const spare = new Spare(plan, jobs, clockOf(plan.zone));
    checkFloats({ plan, jobs, ledgers, spare }, floats, report);
  }
  return faults;
}

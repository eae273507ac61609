import { problemsOf } from './fault.js';
import type { PlanFileProblems } from './plan-file-problems.js';

/** What is wrong with a plan that was sent. */
export const planFileProblem = problemsOf<PlanFileProblems>();

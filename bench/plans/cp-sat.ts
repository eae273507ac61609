// The peer of the benches of plans: a general constraint solver (CP-SAT of OR-Tools, in WebAssembly), used by its documented
// calls alone.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What the bench uses of the library. */
export interface Expression {
  plus(other: Expression | number): Expression;
  minus(other: Expression | number): Expression;
  times(by: number): Expression;
}
export interface Literal extends Expression {
  not(): Literal;
}
export interface Constraint {
  onlyEnforceIf(...literals: Literal[]): Constraint;
}
export type Interval = object;
export interface Model {
  newIntVar(low: number, high: number, name?: string): Expression;
  newIntVarFromDomain(domain: object, name?: string): Expression;
  newBoolVar(name?: string): Literal;
  addLinearConstraint(expression: Expression, low: number, high: number): Constraint;
  addExactlyOne(literals: Literal[]): Constraint;
  addImplication(from: Literal, to: Literal): Constraint;
  newFixedSizeIntervalVar(start: Expression | number, size: number): Interval;
  newOptionalFixedSizeIntervalVar(start: Expression, size: number, present: Literal): Interval;
  newOptionalIntervalVar(
    start: Expression,
    size: Expression,
    end: Expression,
    present: Literal,
  ): Interval;
  addCumulative(intervals: Interval[], demands: number[], capacity: number): Constraint;
  addHint(variable: Expression, value: number): void;
  proto(): { solutionHint?: { vars: number[]; values: number[] } };
  minimize(expression: Expression): void;
}
export interface Solver {
  solve(model: Model, parameters: Record<string, unknown>): Promise<unknown>;
  statusName(): string;
  value(expression: Expression | number): number;
  bestObjectiveBound(): number;
  /** Its own measure of work; about a second each. */
  readonly deterministic_time: number;
}
export interface Library {
  CpModel: new () => Model;
  CpSolver: new () => Solver;
  Domain: { fromIntervals(intervals: readonly (readonly [number, number])[]): object };
}

/** Past every moment of a plan. */
export const FAR = 10_000_000;

let library: Library | undefined;

/** The library, installed from `bench/package.json` where it is not there. */
export async function cpSat(): Promise<Library> {
  if (library) return library;
  // `bench/run.mjs` runs each bench in the root of the repository.
  const folder = resolve('bench');
  if (!existsSync(`${folder}/node_modules/or-tools-wasm`)) {
    const quiet = ['--no-audit', '--no-fund', '--ignore-scripts', '--no-package-lock', '--silent'];
    execFileSync('npm', ['i', '--prefix', folder, ...quiet], { stdio: 'inherit' });
  }
  const path = createRequire(`${folder}/package.json`).resolve('or-tools-wasm/cp-sat');
  library = (await import(pathToFileURL(path).href)) as Library;
  return library;
}

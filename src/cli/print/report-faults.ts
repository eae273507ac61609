// Faults of what was read, on standard error.
import type { Fault } from '../../model/index.js';
import { BadInput } from '../errors.js';
import { faultLines } from './fault-lines.js';
import { printError } from './screen.js';

export function reportAll(faults: readonly Fault[]): void {
  for (const line of faultLines(faults)) printError(line);
}

/** @throws {BadInput} When one of them is an error. */
export function report(faults: readonly Fault[]): void {
  reportAll(faults);
  if (faults.some((fault) => fault.severity === 'error')) throw new BadInput();
}

// Everything for a plain page: all elements, registered, and what a page needs to work with them.
import type { ReadPlan } from '../src/model/index.js';
import './all.js';

export { createWorkerEngine } from '../src/engine/worker-engine.js';
export { cautions, emptyPlan, planFile } from '../src/model/index.js';
export { documentContext } from './document/define.js';

/** Reads a plan file; `file` names it in faults. What reads it is loaded with the first. Rejects only where it cannot be loaded. */
export async function readPlanFile(text: string, file?: string): Promise<ReadPlan> {
  const { readPlanFile: read } = await import('../src/model/read-plan-file.js');
  return read(text, file);
}

// Everything for a plain page: all elements, registered, and what a page needs to work with them.
import './all.js';

export { createWorkerEngine } from '../src/engine/worker-engine.js';
export { cautions, emptyPlan, planFile, readPlanFile } from '../src/model/index.js';
export { documentContext } from './document/define.js';

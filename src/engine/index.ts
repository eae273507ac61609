export { createInlineEngine } from './inline-engine.js';
export { createPortEngine } from './port-engine.js';
export { createWorkerEngine } from './worker-engine.js';
export { serve } from './serve.js';
export { recompute } from './recompute.js';
export type { Port } from './protocol.js';
export type {
  AllocateOptions,
  Engine,
  ImportedFile,
  ImportReport,
  ImportResult,
  PackageSummary,
  Progress,
  Results,
} from './types.js';

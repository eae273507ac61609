import { sizeLimits } from '../../model/index.js';

/** Bytes of the largest file that is read. A page need not read more of a file than one byte beyond it. */
export const largestFileBytes = sizeLimits.bytes;

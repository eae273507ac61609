import type { readShiftLog } from '../risk/index.js';

/** What reads the log of a shift from a file. Rejects where it cannot be loaded. */
export const loadShiftLogReader = async (): Promise<typeof readShiftLog> =>
  (await import('../risk/shift/log-file.js')).readShiftLog;

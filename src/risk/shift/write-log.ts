import type { Instant } from '../../calendar/index.js';
import { chainOf } from './log-chain.js';
import type { ShiftLog } from './shift-log.js';

/** A shift's log as a file that another device can take in. */
export function shiftLogFile(window: string, log: ShiftLog, start?: Instant): string {
  const file = {
    schema: 1,
    window,
    ...(start !== undefined && { start }),
    log,
    chain: chainOf(log),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

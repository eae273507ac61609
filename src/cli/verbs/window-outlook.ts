import type { AccessWindow } from '../../model/index.js';
import type { HandbackResult } from '../../risk/index.js';

/** A window and its handback outlook. */
export interface WindowOutlook {
  readonly window: AccessWindow;
  readonly result: HandbackResult;
}

import type { AccessWindow } from '../../model/index.js';
import type { HandbackResult } from '../../risk/index.js';

/** A window with how it stands. */
export interface WindowOutlook {
  readonly window: AccessWindow;
  readonly result: HandbackResult;
}

import { BareSession } from './bare-session.js';
import { explain } from './explain.js';

/** A session whose verdicts can be read whole. */
export class Session extends BareSession {
  constructor() {
    super(explain);
  }
}

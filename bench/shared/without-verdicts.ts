import { Outlines } from '../../src/engine/incremental/outlines.js';
import { wholeReading } from '../../src/engine/site/site-plan.js';
import type { Results } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';

/** A session that works out all but the verdicts, at any size: what the peer's sheet has, where it has none either. */
export class SessionWithoutVerdicts extends Outlines {
  protected override whole = wholeReading;

  recompute(document: PlanDocument): Results {
    return this.outlineOf(document).outline;
  }
}

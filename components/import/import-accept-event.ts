import type { ImportReport } from '../../src/engine/types.js';
import type { PlanDocument } from '../../src/model/index.js';

/** A reader takes what was read into the plan. */
export class ImportAcceptEvent extends Event {
  static readonly type = 'possession-import-accept';
  readonly document: PlanDocument;
  readonly report: readonly ImportReport[];

  constructor(document: PlanDocument, report: readonly ImportReport[]) {
    super(ImportAcceptEvent.type, { bubbles: true, composed: true });
    this.document = document;
    this.report = report;
  }
}

declare global {
  interface HTMLElementEventMap {
    [ImportAcceptEvent.type]: ImportAcceptEvent;
  }
}

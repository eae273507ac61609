import type { Edit } from '../../src/edits/index.js';
import type { PlanDocument } from '../../src/model/index.js';

/** Another tab changed the plan; `document` now holds its work and ours. Sent by a `KeptPlan`. */
export class PlanFollowEvent extends Event {
  readonly document: PlanDocument;
  /** What leads from the document shown before to this one: what a history must follow. */
  readonly edit: Edit;

  constructor(document: PlanDocument, edit: Edit) {
    super('plan-follow');
    this.document = document;
    this.edit = edit;
  }
}

import type { PlanDocument } from '../../src/model/index.js';

/** A person changed a table of the document in an element inside. */
export class DocumentChangeEvent extends Event {
  static readonly type = 'possession-document-change';
  readonly document: PlanDocument;
  /** What was done, for a person: "3 cells pasted". */
  readonly label: string;

  constructor(document: PlanDocument, label: string) {
    super(DocumentChangeEvent.type, { bubbles: true, composed: true });
    this.document = document;
    this.label = label;
  }
}

declare global {
  interface HTMLElementEventMap {
    [DocumentChangeEvent.type]: DocumentChangeEvent;
  }
}

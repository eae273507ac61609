import type { ImportReport } from '../../src/engine/index.js';

/** The files of `src` have been read, as far as they could be. */
export class DocumentReadEvent extends Event {
  static readonly type = 'possession-document-read';
  /** One for each file that arrived, in the order of `src`: what was read, what was not, and every fault. */
  readonly report: readonly ImportReport[];
  /** Files that did not arrive, in words. */
  readonly missing: readonly string[];

  constructor(report: readonly ImportReport[], missing: readonly string[]) {
    super(DocumentReadEvent.type, { bubbles: true, composed: true });
    this.report = report;
    this.missing = missing;
  }
}

declare global {
  interface HTMLElementEventMap {
    [DocumentReadEvent.type]: DocumentReadEvent;
  }
}

import type { Pending } from '../../src/edits/index.js';

/** Changes made here met another tab's and were set aside. They are kept until a person has looked at them. */
export class EditsAsideEvent extends Event {
  readonly edits: readonly Pending[];

  constructor(edits: readonly Pending[]) {
    super('edits-aside');
    this.edits = edits;
  }
}

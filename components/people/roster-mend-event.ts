import type { Mend } from './mend-words.js';

/** A reader accepts changes of the roster, to be made one after another. */
export class RosterMendEvent extends Event {
  static readonly type = 'possession-roster-mend';
  readonly changes: readonly Mend[];

  constructor(changes: readonly Mend[]) {
    super(RosterMendEvent.type, { bubbles: true, composed: true });
    this.changes = changes;
  }
}

declare global {
  interface HTMLElementEventMap {
    [RosterMendEvent.type]: RosterMendEvent;
  }
}

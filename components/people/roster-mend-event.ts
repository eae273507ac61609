import type { Mend } from './mend-words.js';

/** A reader accepts changes of the roster, to be made one after another. */
export class RosterMendEvent extends Event {
  static readonly type = 'possession-roster-mend';
  readonly changes: readonly Mend[];
  /** Each change in words, as the reader saw it. */
  readonly texts: readonly string[];

  constructor(changes: readonly Mend[], texts: readonly string[]) {
    super(RosterMendEvent.type, { bubbles: true, composed: true });
    this.changes = changes;
    this.texts = texts;
  }
}

declare global {
  interface HTMLElementEventMap {
    [RosterMendEvent.type]: RosterMendEvent;
  }
}

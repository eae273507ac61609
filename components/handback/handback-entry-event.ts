import type { Instant } from '../../src/calendar/index.js';
import type { ShiftEvent } from '../../src/engine/index.js';

/** What someone wants written down. */
export interface HandbackEntry {
  readonly window: string;
  readonly event: ShiftEvent;
  /** When it happened; null: at the moment of the report, which the listener settles. */
  readonly at: Instant | null;
  /** Id of the entry it puts right. */
  readonly corrects?: string;
}

/**
 * Someone wants something written in the log of a shift that is more than a start or a finish just now: units done, an
 * estimate, a decision, a note, the handback, anything at another time than now, or a correction. The listener adds an
 * entry; nothing in the log is ever changed.
 */
export class HandbackEntryEvent extends Event implements HandbackEntry {
  static readonly type = 'possession-handback-entry';
  readonly window: string;
  readonly event: ShiftEvent;
  readonly at: Instant | null;
  readonly corrects?: string;

  constructor({ window, event, at, corrects }: HandbackEntry) {
    super(HandbackEntryEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.event = event;
    this.at = at;
    if (corrects !== undefined) this.corrects = corrects;
  }
}

declare global {
  interface HTMLElementEventMap {
    [HandbackEntryEvent.type]: HandbackEntryEvent;
  }
}

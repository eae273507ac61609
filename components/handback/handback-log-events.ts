import type { ShiftLog } from '../../src/engine/index.js';

/** Someone wants the log of a shift as a file. The listener saves the text. */
export class HandbackLogSaveEvent extends Event {
  static readonly type = 'possession-handback-log-save';
  readonly window: string;
  /** Name for the file: `shift-W1.json`. */
  readonly name: string;
  readonly text: string;
  /** Media type of the text. */
  readonly mediaType: string;

  constructor(window: string, name: string, text: string, mediaType: string) {
    super(HandbackLogSaveEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.name = name;
    this.text = text;
    this.mediaType = mediaType;
  }
}

/** Someone brings in the log of the same shift from another device. The listener keeps `log` in place of its own. */
export class HandbackLogMergeEvent extends Event {
  static readonly type = 'possession-handback-log-merge';
  readonly window: string;
  /** Both logs as one. */
  readonly log: ShiftLog;
  /** Ids of the entries that are new. */
  readonly added: readonly string[];

  constructor(window: string, log: ShiftLog, added: readonly string[]) {
    super(HandbackLogMergeEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.log = log;
    this.added = added;
  }
}

declare global {
  interface HTMLElementEventMap {
    [HandbackLogSaveEvent.type]: HandbackLogSaveEvent;
    [HandbackLogMergeEvent.type]: HandbackLogMergeEvent;
  }
}

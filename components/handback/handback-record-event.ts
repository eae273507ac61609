/** What someone on site says has just happened. */
export interface HandbackRecord {
  readonly window: string;
  readonly what: 'started' | 'finished';
  /** Id of the activity; absent when it is a step. */
  readonly activity?: string;
  /** Name of the lead-in or lead-out step; absent when it is an activity. */
  readonly step?: string;
}

/** Someone reports a start or a finish. The listener settles the time and keeps the log. */
export class HandbackRecordEvent extends Event implements HandbackRecord {
  static readonly type = 'possession-handback-record';
  readonly window: string;
  readonly what: 'started' | 'finished';
  readonly activity?: string;
  readonly step?: string;

  constructor({ window, what, activity, step }: HandbackRecord) {
    super(HandbackRecordEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.what = what;
    if (activity !== undefined) this.activity = activity;
    if (step !== undefined) this.step = step;
  }
}

declare global {
  interface HTMLElementEventMap {
    [HandbackRecordEvent.type]: HandbackRecordEvent;
  }
}

import { grantStep, lineOfGrant, type ShiftEvent } from '../../src/engine/index.js';

/** What someone on site says has just happened. */
export interface HandbackRecord {
  readonly window: string;
  readonly what: 'started' | 'finished';
  /** Id of the activity; absent when it is a step. */
  readonly activity?: string;
  /** Name of the lead-in or lead-out step; absent when it is an activity. */
  readonly step?: string;
  /** Which of the two is meant where a step of the lead-in and one of the lead-out are called alike. */
  readonly stage?: 'lead-in' | 'lead-out';
}

/** Someone reports a start or a finish. The listener settles the time and keeps the log. */
export class HandbackRecordEvent extends Event implements HandbackRecord {
  static readonly type = 'possession-handback-record';
  readonly window: string;
  readonly what: 'started' | 'finished';
  readonly activity?: string;
  readonly step?: string;
  readonly stage?: 'lead-in' | 'lead-out';

  constructor({ window, what, activity, step, stage }: HandbackRecord) {
    super(HandbackRecordEvent.type, { bubbles: true, composed: true });
    this.window = window;
    this.what = what;
    if (activity !== undefined) this.activity = activity;
    if (step !== undefined) this.step = step;
    if (stage !== undefined) this.stage = stage;
  }

  /** The same as an entry of the log has it. */
  get event(): ShiftEvent {
    return eventOf(this);
  }
}

/** What a report says, as an entry of the log has it. */
export function eventOf({
  what,
  activity,
  step = '',
  stage,
}: Omit<HandbackRecord, 'window'>): ShiftEvent {
  if (activity !== undefined) return { kind: `activity-${what}`, activity };
  if (step === grantStep) return { kind: 'granted' };
  const line = lineOfGrant(step);
  if (line !== undefined) return { kind: 'line-granted', line };
  return { kind: `step-${what}`, step, ...(stage && { stage }) };
}

declare global {
  interface HTMLElementEventMap {
    [HandbackRecordEvent.type]: HandbackRecordEvent;
  }
}

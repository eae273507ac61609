import type { ReactiveControllerHost } from 'lit';
import type { ShiftEvent, ShiftLog } from '../../src/engine/index.js';
import { addToShift, readShift } from './shift-store.js';

/** The shift of one window: whether it is followed live, and what was written down in it. */
export class Shift {
  live = false;
  log: ShiftLog = [];
  trouble = '';

  readonly #host: ReactiveControllerHost;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  /** Shows the log that was kept of a window's shift. */
  open(plan: string, window: string): void {
    this.log = readShift(plan, window);
    this.#host.requestUpdate();
  }

  /** Writes an entry down, in storage before it is shown. */
  record(plan: string, window: string, at: number, event: ShiftEvent): void {
    const entry = {
      id: `${at}-${this.log.length}`,
      at,
      enteredAt: at,
      by: 'this desk',
      event,
    };
    const { log, stored } = addToShift(plan, window, this.log, entry);
    this.log = log;
    this.trouble = stored
      ? ''
      : 'The entry is shown but could not be stored: save the log to a file before closing.';
    this.#host.requestUpdate();
  }
}

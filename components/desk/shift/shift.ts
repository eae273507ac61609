import { mergeShiftLogs, type ShiftEntry, type ShiftLog } from '../../../src/engine/index.js';
import { keepText, keptText } from '../../shared/kept-text.js';
import type { WordedHost } from '../worded-host.js';
import { carriedShift, carryShift, keepShift, readShift, type ShiftPlan } from './shift-store.js';

/** The shift of one window: whether it is followed live, and what was written down in it. */
export class Shift {
  live = false;
  log: ShiftLog = [];
  trouble = '';
  /** Of the person who writes; empty: not said. */
  initials = keptText('possession-fit/initials');

  readonly #host: WordedHost;

  constructor(host: WordedHost) {
    this.#host = host;
  }

  /** Shows the log that was kept of a window's shift. */
  open(plan: ShiftPlan, window: string): void {
    const own = readShift(plan, window);
    const { log, added } = mergeShiftLogs(own, carriedShift(plan, window));
    this.log = log;
    if (added.length > 0) keepShift(plan, window, log);
    carryShift(plan, window, own);
    this.#host.requestUpdate();
  }

  /** Writes an entry down, in storage before it is shown. */
  record(plan: ShiftPlan, window: string, entry: Omit<ShiftEntry, 'id' | 'by'>): void {
    // Another tab or device may write into the same log: ids never collide.
    const by = `${this.initials === '' ? 'no initials' : this.initials}, device ${deviceName()}`;
    this.keep(plan, window, [{ ...entry, id: freshId(), by }]);
  }

  setInitials(initials: string): void {
    this.initials = initials.trim();
    keepText('possession-fit/initials', this.initials);
    this.#host.requestUpdate();
  }

  /** Keeps entries beside those that are in storage by now, whoever wrote them. */
  keep(plan: ShiftPlan, window: string, log: ShiftLog): void {
    const stored = mergeShiftLogs(readShift(plan, window), this.log).log;
    this.log = mergeShiftLogs(stored, log).log;
    carryShift(plan, window, this.log);
    this.trouble = keepShift(plan, window, this.log) ? '' : this.#host.words.forms.shift.notStored;
    this.#host.requestUpdate();
  }
}

/** A short name that this browser keeps: entries of two devices are told apart, whoever carries them. */
function deviceName(): string {
  const key = 'possession-fit/device';
  const name = keptText(key) || freshId().slice(0, 4);
  keepText(key, name);
  return name;
}

/** An id that no other device comes to. `randomUUID` is missing on pages without a secure origin. */
function freshId(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))]
    .map((value) => value.toString(36))
    .join('-');
}

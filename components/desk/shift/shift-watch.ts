import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { MINUTE } from '../../../src/calendar/index.js';
import { alarmsBetween, type Alarm } from '../../handback/live/alarms.js';
import { signal, type AlarmSignals } from './alarm-signal.js';
import type { Desk } from '../desk-parts.js';
import { forecast, openLog } from '../views/handback-view.js';
import type { ShiftAlarms } from './shift-alarms.js';
import { isShiftKey } from './shift-store.js';

const SECOND = 1000;

/**
 * Keeps the view for the shift in step with the clock while it is open: countdowns each second, a forecast each minute,
 * a warning before a cut-off and at it, and what other tabs write down as soon as they do.
 */
export class ShiftWatch implements ReactiveController, ShiftAlarms {
  /** The last alarm that went off and that nobody has put away. */
  alarm: Alarm | null = null;
  signals: AlarmSignals = { sound: false, vibration: false };

  readonly #desk: Desk & ReactiveControllerHost;
  #timer: ReturnType<typeof setInterval> | undefined;
  #lastTick = 0;

  constructor(desk: Desk & ReactiveControllerHost) {
    this.#desk = desk;
    desk.addController(this);
  }

  hostConnected(): void {
    this.#lastTick = this.#desk.moment();
    this.#timer = setInterval(() => this.tick(), SECOND);
    window.addEventListener('storage', this.#onStorage);
  }

  hostDisconnected(): void {
    clearInterval(this.#timer);
    window.removeEventListener('storage', this.#onStorage);
  }

  /** Puts the alarm away. */
  silence(): void {
    this.alarm = null;
    this.#desk.requestUpdate();
  }

  setSignals(signals: AlarmSignals): void {
    this.signals = signals;
    // The first tone must come from a press: browsers keep silent otherwise.
    signal(signals);
    this.#desk.requestUpdate();
  }

  /** What is due by now. */
  tick(): void {
    const desk = this.#desk;
    const now = desk.moment();
    const before = this.#lastTick;
    this.#lastTick = now;
    if (!desk.shift.live) return;
    const result = desk.outlooks.handbacks.find(
      (handback) => handback.window === desk.picked.window,
    );
    const due = result ? alarmsBetween(result.cutOffs, before, now) : [];
    const last = due.at(-1);
    if (last) {
      // What falls on one moment is told in one breath.
      const names = due.filter((alarm) => alarm.at === last.at).map((alarm) => alarm.name);
      this.alarm = { ...last, name: [...new Set(names)].join(', ') };
      signal(this.signals);
    }
    const old = result?.live ? now - result.live.at >= MINUTE : false;
    if (old && !desk.outlooks.isBusy('live')) void forecast(desk);
    desk.requestUpdate();
  }

  readonly #onStorage = (event: StorageEvent): void => {
    if (!this.#desk.shift.live || !isShiftKey(event.key)) return;
    openLog(this.#desk);
    void forecast(this.#desk);
  };
}

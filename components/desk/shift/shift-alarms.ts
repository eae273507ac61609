import type { Alarm } from '../../handback/live/alarms.js';
import type { AlarmSignals } from './alarm-signal.js';

/** What the views show and change of the alarms of a shift. */
export interface ShiftAlarms {
  /** The last alarm that went off and that nobody has put away. */
  readonly alarm: Alarm | null;
  readonly signals: AlarmSignals;
  silence(): void;
  setSignals(signals: AlarmSignals): void;
}

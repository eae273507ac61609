import type { Instant } from '../../../src/calendar/index.js';
import type { shiftState } from '../../../src/engine/index.js';
import type { HandbackEntry } from '../handback-entry-event.js';
import type { HandbackRecord } from '../handback-record-event.js';
import type { LogFiles } from './log-files.js';
import type { CutOff, Setting } from '../result-parts.js';
import { seenOf, type ShiftLine } from './shift-lines.js';
import type { HandbackStrings } from '../strings.js';

/** What the parts of the view for the shift draw from and report to. */
export interface LiveSetting extends Setting<HandbackStrings> {
  /** The moment countdowns count from; null: none is known, so none is shown. */
  readonly now: Instant | null;
  readonly lines: readonly ShiftLine[];
  /** Lines of the window, which may be granted one by one. */
  readonly windowLines: readonly string[];
  readonly cutOffs: readonly CutOff[];
  readonly state: ReturnType<typeof shiftState>;
  /** Nothing may be written down. */
  readonly readonly: boolean;
  readonly record: (what: Omit<HandbackRecord, 'window'>) => void;
  readonly files: Omit<LogFiles, keyof Setting<HandbackStrings>>;
  readonly write: (entry: Omit<HandbackEntry, 'window'>) => void;
}

/** Units that the log says are done of an activity in this window. */
export const unitsDone = ({ state }: LiveSetting, activity: string): number =>
  state.actuals.find((actual) => actual.activity === activity)?.unitsDone ?? 0;

/** The state by the forecast, or further on by what the log says since. */
export function stateOf(off: CutOff, setting: LiveSetting): CutOff['state'] {
  const { startedAt, finishedAt } = seenOf(setting.lines, off, setting.cutOffs);
  if (off.state === 'done' || finishedAt !== undefined) return 'done';
  const begun = startedAt !== undefined || (off.activity && unitsDone(setting, off.activity) > 0);
  return off.state === 'begun' || begun ? 'begun' : 'to-come';
}

import type { Problem } from '../../../src/model/index.js';
import { problemWords } from '../../shared/problem-words.js';
import { html, type TemplateResult } from 'lit';
import {
  mergeShiftLogs,
  loadShiftLogReader,
  shiftLogFile,
  shiftTable,
  type ShiftLog,
} from '../../../src/engine/index.js';
import type { Instant } from '../../../src/calendar/index.js';
import { fileButton } from '../../shared/file-button.js';
import { HandbackLogMergeEvent, HandbackLogSaveEvent } from '../handback-log-events.js';
import type { Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { wordsOf } from '../../shared/words-of.js';
import { changing } from '../../shared/changing.js';

export interface LogFiles extends Setting<HandbackStrings> {
  readonly window: string;
  /** When the window starts; null: not known. */
  readonly start: Instant | null;
  readonly log: ShiftLog;
  /** What became of the last file brought in; empty: none was. */
  readonly said: readonly (string | Problem)[];
  /** No log may be brought in. */
  readonly readonly: boolean;
  readonly send: (event: Event) => void;
  readonly say: (lines: LogFiles['said']) => void;
}

async function bringIn(file: File, on: LogFiles): Promise<void> {
  const { strings, window, log } = on;
  const [readShiftLog, text] = await Promise.all([loadShiftLogReader(), file.text()]);
  const read = readShiftLog(text);
  if (read.window !== null && read.window !== window) {
    on.say([strings.otherWindow(read.window)]);
    return;
  }
  if (read.start !== null && on.start !== null && read.start !== on.start) {
    on.say([strings.otherNight(window)]);
    return;
  }
  const merged = mergeShiftLogs(log, read.log);
  const said = [
    ...(read.window === null ? [] : [strings.broughtIn(merged.added.length)]),
    ...read.faults,
    ...merged.differing.map(strings.differing),
  ];
  if (merged.added.length > 0) on.send(new HandbackLogMergeEvent(window, merged.log, merged.added));
  on.say(said);
}

/** The log out as a file for another device or as a table, and the log of another device in. */
export function logFiles(on: LogFiles): TemplateResult {
  const { strings, window, log, zone, send } = on;
  const save = (name: string, text: string, mediaType: string): void =>
    send(new HandbackLogSaveEvent(window, name, text, mediaType));
  return html`<section class="log-files" aria-label=${strings.passOn}>
    <div class="file-buttons">
      <button
        type="button"
        class="save-log"
        ?disabled=${log.length === 0}
        @click=${() => save(`shift-${window}.json`, shiftLogFile(window, log, on.start ?? undefined), 'application/json')}
      >
        ${strings.saveLog}
      </button>
      <button
        type="button"
        class="save-table"
        ?disabled=${log.length === 0}
        @click=${() => save(`shift-${window}.csv`, shiftTable(log, zone), 'text/csv')}
      >
        ${strings.saveTable}
      </button>
      ${changing(
        on.readonly,
        fileButton(
          strings.bringIn,
          '.json,application/json',
          (file) => void bringIn(file, on).catch((error: unknown) => on.say([wordsOf(error)])),
        ),
      )}
    </div>
    <div class="said" role="status">
      ${on.said.map((told) => html`<p>${typeof told === 'string' ? told : problemWords(told)[0]}</p>`)}
    </div>
  </section>`;
}

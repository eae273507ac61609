import { html, type TemplateResult } from 'lit';
import { durationText, MINUTE } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { clockEntry } from './clock-entry.js';
import type { LiveSetting } from './live-setting.js';
import { exactClock } from '../times.js';

/** The last entry of all: the line is the railway's again. */
export function handingBack(result: HandbackResult, setting: LiveSetting): TemplateResult {
  const { zone, strings, state, write, now } = setting;
  const { handedBackAt } = state;
  if (handedBackAt !== null) {
    const early = Math.round((result.bookedEnd - handedBackAt) / MINUTE);
    return html`<p class="handed-back ${early < 0 ? 'overrun' : 'held'}">
      ${strings.wasHandedBack(
        exactClock(handedBackAt, zone),
        early < 0
          ? strings.late(durationText(-early))
          : (result.bookedBefore === null ? strings.beforeBookedEnd : strings.beforeAgreedEnd)(
              durationText(early),
            ),
      )}
    </p>`;
  }
  return html`<div class="hand-back">
    <button
      type="button"
      part="record"
      class="handed"
      @click=${() => write({ event: { kind: 'handed-back' }, at: null })}
    >
      ${strings.handBackNow}
    </button>
    <details class="earlier">
      <summary>
        ${strings.anotherTime}<span class="unseen">: ${strings.logHandedBack}</span>
      </summary>
      ${clockEntry({
        near: now ?? result.bookedEnd,
        zone,
        strings,
        subject: strings.logHandedBack,
        buttons: [
          {
            word: strings.logHandedBack,
            press: (at) => write({ event: { kind: 'handed-back' }, at }),
          },
        ],
      })}
    </details>
    <details class="earlier">
      <summary>${strings.askedBack}</summary>
      ${clockEntry({
        near: result.bookedEnd,
        zone,
        strings,
        subject: strings.askedBack,
        buttons: [
          {
            word: strings.askedBy,
            press: (by) => write({ event: { kind: 'asked-back', by }, at: null }),
          },
          {
            word: strings.endAgreed,
            press: (end) => write({ event: { kind: 'end-agreed', end }, at: null }),
          },
        ],
      })}
    </details>
  </div>`;
}

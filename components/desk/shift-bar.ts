import { html, nothing, type TemplateResult } from 'lit';
import { clockText } from '../shared/format.js';
import type { Desk } from './desk-parts.js';

/** What stands above the shift: an alarm while one is on, who writes, and how alarms make themselves felt. */
export function shiftBar(desk: Desk, zone: string): TemplateResult {
  const { shift, watch } = desk;
  const { alarm, signals } = watch;
  const choice = (name: 'sound' | 'vibration', words: string): TemplateResult =>
    html`<label class="shift-choice"
      ><input
        type="checkbox"
        .checked=${signals[name]}
        @change=${(event: Event) =>
          watch.setSignals({
            ...signals,
            [name]: (event.currentTarget as HTMLInputElement).checked,
          })}
      />${words}</label
    >`;
  return html`${
      alarm
        ? html`<div class="alarm" role="alert">
            <strong
              >${
                alarm.minutes === 0
                  ? `Cut-off now, ${clockText(alarm.at, zone)}: ${alarm.name}.`
                  : `${alarm.minutes} min to the cut-off of ${alarm.name}, ${clockText(alarm.at, zone)}.`
              }</strong
            >
            <button type="button" @click=${() => watch.hush()}>Seen</button>
          </div>`
        : nothing
    }
    <div class="shift-bar">
      <label class="shift-choice"
        >Your initials
        <input
          type="text"
          maxlength="8"
          autocomplete="off"
          .value=${shift.initials}
          @change=${(event: Event) =>
            shift.setInitials((event.currentTarget as HTMLInputElement).value)}
      /></label>
      ${choice('sound', 'Sound before a cut-off')} ${choice('vibration', 'Vibration')}
    </div>`;
}

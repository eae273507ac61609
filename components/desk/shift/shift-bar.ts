import { html, nothing, type TemplateResult } from 'lit';
import { clockText } from '../../shared/format.js';
import type { Desk } from '../desk-parts.js';

/** Stands above the shift while an alarm is on. */
export function alarmLine(
  { watch, words: { forms } }: Desk,
  zone: string,
): TemplateResult | typeof nothing {
  const { alarm } = watch;
  if (!alarm) return nothing;
  return html`<div class="alarm" role="alert">
    <strong
      >${
        alarm.minutes === 0
          ? forms.shift.cutOffNow(clockText(alarm.at, zone), alarm.name)
          : forms.shift.toCutOff(alarm.minutes, alarm.name, clockText(alarm.at, zone))
      }</strong
    >
    <button type="button" @click=${() => watch.silence()}>${forms.shift.seen}</button>
  </div>`;
}

/** What stands below the shift: who writes, and how alarms make themselves felt. */
export function shiftBar(desk: Desk): TemplateResult {
  const { shift, watch } = desk;
  const { signals } = watch;
  const words = desk.words.forms.shift;
  const choice = (name: 'sound' | 'vibration', text: string): TemplateResult =>
    html`<label class="shift-choice"
      ><input
        type="checkbox"
        .checked=${signals[name]}
        @change=${(event: Event) =>
          watch.setSignals({
            ...signals,
            [name]: (event.currentTarget as HTMLInputElement).checked,
          })}
      />${text}</label
    >`;
  return html`<div class="shift-bar">
    <label class="shift-choice"
      >${words.initials}
      <input
        type="text"
        maxlength="8"
        autocomplete="off"
        .value=${shift.initials}
        @change=${(event: Event) =>
          shift.setInitials((event.currentTarget as HTMLInputElement).value)}
    /></label>
    ${choice('sound', words.sound)} ${choice('vibration', words.vibration)}
  </div>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { Setting } from './result-parts.js';
import type { HandbackLogEntry, HandbackLogEvent, ShiftLine } from './shift-lines.js';
import type { HandbackStrings } from './strings.js';
import { exactClock } from './times.js';

/** What an entry says, in words. `titleOf` turns the id of an activity into its title. */
function eventText(
  event: HandbackLogEvent,
  strings: HandbackStrings,
  titleOf: (activity: string) => string,
): string {
  switch (event.kind) {
    case 'granted':
      return strings.logGranted;
    case 'handed-back':
      return strings.logHandedBack;
    case 'step-started':
      return `${event.step}: ${strings.started.toLowerCase()}`;
    case 'step-finished':
      return `${event.step}: ${strings.finished.toLowerCase()}`;
    case 'activity-started':
      return `${titleOf(event.activity)}: ${strings.started.toLowerCase()}`;
    case 'activity-finished':
      return `${titleOf(event.activity)}: ${strings.finished.toLowerCase()}`;
    case 'units-done':
      return strings.logUnits(titleOf(event.activity), event.units);
    case 'minutes-left':
      return strings.logLeft(
        titleOf(event.activity),
        durationText(event.low),
        durationText(event.likely),
        durationText(event.high),
      );
    case 'decided':
      return strings.logDecided(event.name, event.go);
    case 'note':
      return event.text;
    case 'struck-out':
      return strings.struckOut;
  }
}

/** The log of the shift, the newest on top; what was corrected stays, beside its correction. */
export function logList(
  lines: readonly ShiftLine[],
  { zone, strings }: Setting<HandbackStrings>,
  titleOf: (activity: string) => string,
): TemplateResult {
  const entry = (one: HandbackLogEntry): TemplateResult =>
    html`<span class="happened"
        ><strong>${exactClock(one.at, zone)}</strong>
        ${eventText(one.event, strings, titleOf)}</span
      >
      <span class="written">${strings.entered(exactClock(one.enteredAt, zone), one.by)}</span>`;
  return html`<section class="log" aria-label=${strings.log}>
    <h3>${strings.log}</h3>
    ${lines.length === 0 ? html`<p class="quiet">${strings.noLog}</p>` : nothing}
    <ol>
      ${lines.map(
        ({ original, corrections }) =>
          html`<li class=${corrections.length > 0 ? 'was-corrected' : ''}>
            <div class="original">
              ${
                corrections.length > 0
                  ? html`<span class="label">${strings.writtenAs} </span><s>${entry(original)}</s>`
                  : entry(original)
              }
            </div>
            ${corrections.map(
              (one) =>
                html`<div class="correction">
                  ${
                    one.event.kind === 'struck-out'
                      ? html`<span class="happened"><strong>${strings.struckOut}</strong></span>
                          <span class="written"
                            >${strings.entered(exactClock(one.enteredAt, zone), one.by)}</span
                          >`
                      : html`<span class="label">${strings.corrected} </span>${entry(one)}`
                  }
                </div>`,
            )}
          </li>`,
      )}
    </ol>
  </section>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import type { Instant } from '../../../src/calendar/index.js';
import { chainOf, shiftState, type ShiftLog } from '../../../src/engine/index.js';
import { cautionList } from '../../shared/cautions.js';
import { dayText } from '../../shared/format.js';
import { eventText } from '../live/log-list.js';
import type { Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { exactClock } from '../times.js';

/** So much of an entry's stamp is printed: enough to tell two logs apart by eye. */
const STAMP = 8;

/** The log of the shift on a sheet of its own, in the order in which it was written, with what was put right. */
export function printLog(
  log: ShiftLog,
  heading: string,
  { zone, strings }: Setting<HandbackStrings>,
  titleOf: (activity: string) => string,
): TemplateResult | typeof nothing {
  if (log.length === 0) return nothing;
  const time = (at: Instant): string => `${dayText(at, zone)} ${exactClock(at, zone)}`;
  const counts = new Set(shiftState(log).standing.map((entry) => entry.entry.id));
  const chain = chainOf(log);
  const numbers = new Map(log.map((entry, index) => [entry.id, index + 1]));
  return html`<section class="paper log-paper" aria-label=${strings.log}>
    <h2>${strings.log}: ${heading}</h2>
    <table>
      <thead>
        <tr>
          ${strings.logHeads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${log.map((entry, index) => {
          const text = eventText(entry.event, strings, titleOf, (at) => exactClock(at, zone));
          const corrects = entry.corrects === undefined ? undefined : numbers.get(entry.corrects);
          return html`<tr>
            <td>${index + 1}</td>
            <td>${time(entry.at)}</td>
            <td>
              ${counts.has(entry.id) || entry.event.kind === 'struck-out' ? text : html`<s>${text}</s>`}
              ${corrects === undefined ? nothing : strings.logCorrects(corrects)}
            </td>
            <td>${time(entry.enteredAt)}</td>
            <td>${entry.by}</td>
            <td><code>${chain[index]!.slice(0, STAMP)}</code></td>
          </tr>`;
        })}
      </tbody>
    </table>
    ${cautionList(strings.cautions, [strings.cautionLines[0]!, strings.logCaution])}
  </section>`;
}

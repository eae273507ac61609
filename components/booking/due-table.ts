import { html, nothing, type TemplateResult } from 'lit';
import type { Milestone } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { clockText, dayText, floatText } from '../shared/format.js';
import { localTimeOf } from '../../src/calendar/index.js';
import { stateClass, stateMark } from './state-mark.js';
import type { BookingStrings } from './strings.js';
import { titleText } from '../shared/name.js';

/** All dates of all windows in one table, the earliest first. */
export function dueTable(
  milestones: readonly Milestone[],
  windows: readonly AccessWindow[],
  words: BookingStrings,
): TemplateResult {
  const titles = new Map(windows.map((one) => [one.id, titleText(one.title)]));
  return html`<table class="due-list" role="table">
    <thead role="rowgroup">
      <tr role="row">
        <th scope="col" role="columnheader">${words.dueHead}</th>
        <th scope="col" role="columnheader">${words.stateHead}</th>
        <th scope="col" role="columnheader" class="figure">${words.left}</th>
        <th scope="col" role="columnheader">${words.window}</th>
        <th scope="col" role="columnheader">${words.milestone}</th>
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${milestones.map(
        (one) =>
          html`<tr part="milestone" role="row" class=${stateClass(one.state)}>
            <td role="cell" class="due-cell">
              <time
                >${dayText(one.due, one.zone)} ${localTimeOf(one.due, one.zone).year}
                <span class="clock">${clockText(one.due, one.zone)}</span></time
              >
            </td>
            <td role="cell" class="state-cell">${stateMark(one.state, words.state[one.state])}</td>
            <td role="cell" class="figure left">${leftText(one, words)}</td>
            <td role="cell" class="window-cell">
              <strong>${one.window}</strong>
              <span class="quiet">${titles.get(one.window)}</span>
            </td>
            <th scope="row" role="rowheader">
              ${one.milestone}
              ${one.by === undefined ? nothing : html`<span class="by">${words.by(one.by)}</span>`}
              ${one.note === undefined ? nothing : html`<span class="note" lang="en">${one.note}</span>`}
            </th>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** What is left, or how long ago it was; nothing for what is met in time or not needed. */
function leftText(one: Milestone, words: BookingStrings): string {
  if (one.metLateByMinutes !== undefined) return words.metLate(floatText(one.metLateByMinutes));
  if (one.state === 'met' || one.state === 'not needed') return '';
  const size = floatText(Math.abs(one.minutesLeft));
  return one.minutesLeft < 0 ? words.ago(size) : words.inTime(size);
}

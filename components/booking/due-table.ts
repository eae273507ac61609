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
  const titles = new Map(windows.map((window) => [window.id, titleText(window.title)]));
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
        (milestone) =>
          html`<tr part="milestone" role="row" class=${stateClass(milestone.state)}>
            <td role="cell" class="due-cell">
              <time
                >${dayText(milestone.due, milestone.zone)}
                ${localTimeOf(milestone.due, milestone.zone).year}
                <span class="clock">${clockText(milestone.due, milestone.zone)}</span></time
              >
            </td>
            <td role="cell" class="state-cell">
              ${stateMark(milestone.state, words.state[milestone.state])}
            </td>
            <td role="cell" class="figure left">${leftText(milestone, words)}</td>
            <td role="cell" class="window-cell">
              <strong>${milestone.window}</strong>
              <span class="quiet">${titles.get(milestone.window)}</span>
            </td>
            <th scope="row" role="rowheader">
              ${milestone.milestone}
              ${milestone.by === undefined ? nothing : html`<span class="by">${words.by(milestone.by)}</span>`}
              ${milestone.inTwo ? html`<span class="note">${words.inTwo[milestone.before]}</span>` : nothing}
            </th>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** What is left, or how long ago it was; nothing for what is met in time or not needed. */
function leftText(milestone: Milestone, words: BookingStrings): string {
  if (milestone.metLateByMinutes !== undefined)
    return words.metLate(floatText(milestone.metLateByMinutes));
  if (milestone.state === 'met' || milestone.state === 'not needed') return '';
  const size = floatText(Math.abs(milestone.minutesLeft));
  return milestone.minutesLeft < 0 ? words.ago(size) : words.inTime(size);
}

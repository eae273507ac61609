import { html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import { tableIn, tableKinds, type PlanDocument } from '../../src/model/index.js';
import { countText, numberText } from '../shared/format.js';
import type { ImportStrings } from './strings.js';

/** What a table cannot do without, by kind. Every other heading is read where it is known and kept where it is not. */
const needs: readonly (readonly [string, string])[] = [
  ['windows', 'window, start, end. A time is the clock on site: 2027-03-27 22:50.'],
  [
    'work',
    'activity, and minutes, or units with minutes per unit. Put pieces together under package.',
  ],
  ['resources', 'resource, capacity. A resource that is not listed is not limited.'],
  ['trains', 'train, passes at. They price the minutes of a late handback.'],
  ['rules', 'a JSON file of steps, curfews, shifts and the required handback margin.'],
  ['prices', 'a JSON price book: rates are yours, and the contract governs.'],
  ['limits', 'a JSON file of limits on hours, noise, lifting and curing, each with its source.'],
];

/** What the plan holds, and what a file needs. */
export function nowView(document: PlanDocument, words: ImportStrings): TemplateResult {
  const { rules } = document;
  const isEmpty = tableKinds.every((kind) => tableIn(document, kind).rows.length === 0);
  if (isEmpty) return needsView();
  const steps = rules.leadIn.length + rules.leadOut.length;
  return html`<section class="now" aria-label="In the plan now">
    <h2>In the plan now</h2>
    <div class="scroll" tabindex="0" role="region" aria-label="Tables in the plan">
      <table>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">From</th>
            <th scope="col" class="figure">Rows</th>
            <th scope="col">Headings</th>
          </tr>
        </thead>
        <tbody>
          ${tableKinds.map((kind) => {
            const table = tableIn(document, kind);
            return html`<tr>
              <th scope="row">${words.kinds[kind]}</th>
              <td>${table.columns.length > 0 ? table.file : 'nothing yet'}</td>
              <td class="figure">${numberText(table.rows.length)}</td>
              <td>${table.columns.join(', ')}</td>
            </tr>`;
          })}
          <tr>
            <th scope="row">rules</th>
            <td>${rules.name}</td>
            <td class="figure">${steps + rules.curfews.length}</td>
            <td>
              ${countText(steps, 'step')}, ${countText(rules.curfews.length, 'curfew')}, required
              margin ${durationText(rules.margin.minutes)}
            </td>
          </tr>
        </tbody>
      </table>
    </div>
    ${needsList()}
  </section>`;
}

/** Of a plan with nothing in it, only what a file needs. */
function needsView(): TemplateResult {
  return html`<section class="now" aria-label="What a file needs">${needsList()}</section>`;
}

function needsList(): TemplateResult {
  return html`<h2>What a file needs</h2>
    <dl class="needs">
      ${needs.map(
        ([kind, text]) =>
          html`<div>
            <dt>${kind}</dt>
            <dd>${text}</dd>
          </div>`,
      )}
    </dl>`;
}

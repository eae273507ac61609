import { html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import { tableIn, tableKinds, type PlanDocument } from '../../src/model/index.js';
import { numberText } from '../shared/format.js';
import type { ImportStrings } from './strings.js';

/** What the plan holds, and what a file needs. */
export function nowView(document: PlanDocument, words: ImportStrings): TemplateResult {
  const { rules } = document;
  const isEmpty = tableKinds.every((kind) => tableIn(document, kind).rows.length === 0);
  if (isEmpty) return needsView(words);
  const steps = rules.leadIn.length + rules.leadOut.length;
  return html`<section class="now" aria-label=${words.inPlan}>
    <h2>${words.inPlan}</h2>
    <div class="scroll" tabindex="0" role="region" aria-label=${words.tablesInPlan}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.what}</th>
            <th scope="col">${words.from}</th>
            <th scope="col" class="figure">${words.rowsTitle}</th>
            <th scope="col">${words.headingsHead}</th>
          </tr>
        </thead>
        <tbody>
          ${tableKinds.map((kind) => {
            const table = tableIn(document, kind);
            return html`<tr>
              <th scope="row">${words.kinds[kind]}</th>
              <td>${table.columns.length > 0 ? table.file : words.nothingYet}</td>
              <td class="figure">${numberText(table.rows.length)}</td>
              <td>${table.columns.join(', ')}</td>
            </tr>`;
          })}
          <tr>
            <th scope="row">${words.rulesRow}</th>
            <td>${rules.name}</td>
            <td class="figure">${steps + rules.curfews.length}</td>
            <td>
              ${words.count.step(steps)}, ${words.count.curfew(rules.curfews.length)},
              ${words.requiredMargin(durationText(rules.margin.minutes))}
            </td>
          </tr>
        </tbody>
      </table>
    </div>
    ${needsList(words)}
  </section>`;
}

/** Of a plan with nothing in it, only what a file needs. */
function needsView(words: ImportStrings): TemplateResult {
  return html`<section class="now" aria-label=${words.needsTitle}>${needsList(words)}</section>`;
}

function needsList(words: ImportStrings): TemplateResult {
  return html`<h2>${words.needsTitle}</h2>
    <dl class="needs">
      ${words.needsOf.map(
        ([kind, text]) =>
          html`<div>
            <dt>${kind}</dt>
            <dd>${text}</dd>
          </div>`,
      )}
    </dl>`;
}

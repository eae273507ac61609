import { html, nothing, type TemplateResult } from 'lit';
import type { ImportPreview } from '../../src/engine/types.js';
import { numberText } from '../shared/format.js';
import type { Choose } from './choices-view.js';
import { withFields } from './columns-chosen.js';
import type { ImportStrings } from './strings.js';

/** Which column is read as what. */
export function columnsView(
  preview: ImportPreview,
  file: string,
  words: ImportStrings,
  choose: Choose,
): TemplateResult {
  const { columns, fields, chosen } = preview;
  const held = new Set(columns.map((column) => column.field));
  const missing = fields.filter((field) => field.needed && !held.has(field.field));
  return html`<h4>${words.columns}</h4>
    ${
      missing.length > 0
        ? html`<p class="wrong">${words.missing(missing.map((item) => item.field).join(', '))}</p>`
        : nothing
    }
    <div class="scroll" tabindex="0" role="region" aria-label="${words.columns}, ${file}">
      <table class="columns">
        <thead>
          <tr>
            <th scope="col">${words.heading}</th>
            <th scope="col">${words.holds}</th>
            <th scope="col">${words.first}</th>
            <th scope="col" class="figure">${words.filledHead}</th>
          </tr>
        </thead>
        <tbody>
          ${columns.map((column, at) => {
            const name = column.heading.trim() === '' ? words.noHeading : column.heading;
            return html`<tr class=${column.field === null ? 'unread' : ''}>
              <th scope="row">${name}</th>
              <td>
                <select
                  aria-label="${name}: ${words.holds}"
                  data-column=${at}
                  ?disabled=${chosen.kind === null}
                  @change=${(event: Event) => {
                    choose(withFields(preview, [[at, (event.target as HTMLSelectElement).value]]));
                  }}
                >
                  <option value="" .selected=${column.field === null}>${words.kept}</option>
                  ${fields.map(
                    ({ field, needed }) =>
                      html`<option value=${field} .selected=${field === column.field}>
                        ${field}${needed ? ` (${words.needs})` : ''}
                      </option>`,
                  )}
                </select>
              </td>
              <td class="samples">${column.samples.join(' · ')}</td>
              <td class="figure">
                ${numberText(column.filled)}
                ${
                  column.faulty > 0
                    ? html`<span class="wrong"
                        >✕ ${words.faultsIn(words.count.cell(column.faulty))}</span
                      >`
                    : nothing
                }
              </td>
            </tr>`;
          })}
        </tbody>
      </table>
    </div>`;
}

import { html, type TemplateResult } from 'lit';
import type { ChartShown } from './shown.js';

/** The points of a chart as rows, its series as columns. */
export function chartTable(shown: ChartShown): TemplateResult {
  const rows = shown.tableRows ?? shown.points.map((_, i) => i);
  const beside = shown.atPoint;
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${shown.title}>
    <table>
      <thead>
        <tr>
          <th scope="col">${shown.pointTitle}</th>
          ${beside ? html`<th scope="col" class="figure">${shown.valueTitle}</th>` : null}
          ${shown.series.map((item) => html`<th scope="col" class="figure">${item.name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (i) =>
            html`<tr>
              <th scope="row">${shown.pointText(shown.points[i]!)}</th>
              ${beside ? html`<td class="figure">${beside(i)}</td>` : null}
              ${shown.series.map((item) => {
                const value = item.values[i];
                return html`<td class="figure">
                  ${value === null || value === undefined ? '' : (item.text ?? shown.valueText)(value)}
                </td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

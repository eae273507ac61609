import { html, nothing, type TemplateResult } from 'lit';
import type { NoiseOfActivity } from '../../src/engine/index.js';
import type { NoiseSettings } from '../../src/model/index.js';
import { isOver } from './hours-picture.js';
import type { NoiseStrings } from './strings.js';
import { numberText } from '../shared/format.js';

const db = (level: number): string => numberText(level, 1);

/** The worst level of each activity in each period against the limit, with the dwelling it falls on and its plant. */
export function levelsTable(
  activities: readonly NoiseOfActivity[],
  { limits }: NoiseSettings,
  words: NoiseStrings,
): TemplateResult {
  return html`<section>
    <h3>${words.levels}</h3>
    <table class="cards levels">
      <thead>
        <tr>
          <th scope="col">${words.activity}</th>
          ${limits.periods.map((period) => html`<th scope="col">${period.period}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${activities.map(
          (activity) =>
            html`<tr>
              <th scope="row">
                ${activity.activity} ${activity.title}
                ${
                  activity.plant.length > 0
                    ? html`<span class="source"
                        >${words.plant(activity.plant.map((each) => `${each.count} × ${each.plant}`).join(', '))}</span
                      >`
                    : nothing
                }
                ${activity.notListed.length > 0 ? html`<span class="source">${words.notListed(activity.notListed.join(', '))}</span>` : nothing}
              </th>
              ${limits.periods.map((period, at) => {
                const worst = activity.worst[at];
                if (!worst)
                  return html`<td>
                    <span class="narrow">${period.period}: </span>${words.unknown}
                  </td>`;
                const text = isOver(worst)
                  ? words.over(db(worst.overDb), db(worst.levelDb), db(worst.limitDb))
                  : words.within(db(worst.levelDb), db(worst.limitDb));
                return html`<td class=${isOver(worst) ? 'bad-text' : 'good-text'}>
                  <span class="narrow">${period.period}: </span>${text}<span class="source"
                    >${worst.dwelling}</span
                  >
                </td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}

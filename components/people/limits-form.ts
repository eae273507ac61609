import { html, nothing, type TemplateResult } from 'lit';
import type { Limit, LimitSet } from '../../src/model/index.js';
import { choiceField } from '../shared/fields/choice-field.js';
import { numberField } from '../shared/fields/number-field.js';
import type { PeopleStrings } from './strings.js';

/**
 * The limits with their sources, each to be changed, and other sets of limits to take instead.
 *
 * @param change Called with the whole set as changed.
 */
export function limitsForm(
  set: LimitSet,
  sets: readonly LimitSet[],
  words: PeopleStrings,
  change: (set: LimitSet) => void,
): TemplateResult {
  const put = (at: number, limit: Limit): void =>
    change({ ...set, limits: set.limits.with(at, limit) });
  return html`<section>
    <h3>${words.limits}</h3>
    ${set.note === undefined ? nothing : html`<p class="quiet">${set.note}</p>`}
    <div class="fields">
      ${sets.length === 0 ? nothing : setChoice(set, sets, words, change)}
      ${choiceField({
        label: words.travel,
        value: set.travel,
        choices: [
          ['counted', words.travelCounted],
          ['not counted', words.travelNot],
        ],
        change: (travel) => change({ ...set, travel }),
      })}
    </div>
    <table class="cards">
      <tbody>
        ${set.limits.map(
          (item, at) =>
            html`<tr>
              <th scope="row">
                ${item.name}<span class="source">${item.source} (${item.sureness})</span>
              </th>
              <td>${limitField(item, words, (limit) => put(at, limit))}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}

function setChoice(
  set: LimitSet,
  sets: readonly LimitSet[],
  words: PeopleStrings,
  change: (set: LimitSet) => void,
): TemplateResult {
  return html`<label class="field sets"
    ><span>${words.another}</span>
    <select
      @change=${(event: Event) => {
        const chosen = sets[Number((event.currentTarget as HTMLSelectElement).value)];
        if (chosen) change(chosen);
      }}
    >
      <option value="">${set.name}</option>
      ${sets.map((item, at) =>
        item.name === set.name ? nothing : html`<option value=${at}>${item.name}</option>`,
      )}
    </select></label
  >`;
}

/** The figure of a limit to be changed: hours for a time, else a count. */
function limitField(
  limit: Limit,
  words: PeopleStrings,
  change: (limit: Limit) => void,
): TemplateResult {
  const label = limit.name;
  if ('minutes' in limit)
    return numberField({
      label,
      value: limit.minutes / 60,
      unit: 'h',
      min: 1 / 60,
      max: 1600,
      change: (hours) => change({ ...limit, minutes: Math.max(1, Math.round(hours * 60)) }),
    });
  const bounds = { label, min: 1, max: 366, step: 1 } as const;
  if (limit.limit === 'turns-in-fourteen-days')
    return numberField({
      ...bounds,
      value: limit.turns,
      unit: words.units.turns,
      change: (turns) => change({ ...limit, turns }),
    });
  if (limit.limit === 'nights-in-a-row')
    return numberField({
      ...bounds,
      value: limit.nights,
      unit: words.units.nights,
      change: (nights) => change({ ...limit, nights }),
    });
  return numberField({
    ...bounds,
    value: limit.days,
    unit: words.units.days,
    change: (days) => change({ ...limit, days }),
  });
}

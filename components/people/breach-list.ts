import { html, nothing, type TemplateResult } from 'lit';
import type { PeopleAnswer, RosterBreach } from '../../src/engine/index.js';
import { stretchText } from '../shared/format.js';
import { measureText, mendText, type Mend } from './mend-words.js';
import type { PeopleStrings } from './strings.js';

/** Makes changes on the roster; null where nothing takes them. */
export type Accept = ((changes: readonly Mend[]) => void) | null;

/** Each limit broken, with its source and the smallest change that ends it; then what mends the whole roster. */
export function breachList(
  { breaches, turns, zone, together }: PeopleAnswer,
  words: PeopleStrings,
  accept: Accept,
): TemplateResult {
  if (breaches.length === 0)
    return html`<section>
      <h3>${words.broken}</h3>
      <p class="good-text">${words.nothing}</p>
    </section>`;
  const byId = new Map(turns.map((turn) => [turn.id, turn]));
  return html`<section>
    <h3>${words.broken}</h3>
    <p class="quiet">${words.tried}</p>
    <table class="cards breaches">
      <thead>
        <tr>
          <th scope="col">${words.who}</th>
          <th scope="col">${words.limit}</th>
          <th scope="col">${words.found}</th>
          <th scope="col">${words.mend}</th>
        </tr>
      </thead>
      <tbody>
        ${breaches.map((breach) => {
          const turn = byId.get(breach.assignment);
          return html`<tr>
            <th scope="row">
              ${breach.crew}, ${breach.assignment}
              ${turn ? html`<span class="source">${stretchText(turn.start, turn.end, zone)}</span>` : nothing}
            </th>
            <td>
              ${breach.name}
              <span class="source">${breach.source} (${breach.sureness})</span>
            </td>
            <td>
              <span class="bad-text">${measureText(breach.found, breach.unit, words)}</span
              >${words.notAllowed(measureText(breach.allowed, breach.unit, words))}
            </td>
            <td>${mends(breach, words, accept)}</td>
          </tr>`;
        })}
      </tbody>
    </table>
    ${
      together.changes.length > 0
        ? html`<h3>${words.together}</h3>
            <ol class="together">
              ${together.changes.map((mend) => html`<li>${mendText(mend, words)}</li>`)}
            </ol>
            <p>
              ${words.left(together.left)}
              ${together.changes.some(isUnchecked) ? words.competences : nothing}
            </p>
            ${
              accept
                ? html`<button
                    class="strong"
                    type="button"
                    @click=${() => accept(together.changes)}
                  >
                    ${words.makeAll(together.changes.length)}
                  </button>`
                : nothing
            }`
        : nothing
    }
  </section>`;
}

/** Gives a turn away of which the roster does not say what it needs. */
const isUnchecked = (mend: Mend): boolean => mend.change === 'give to' && !mend.competence;

function checkedText(mend: Mend, words: PeopleStrings): string {
  if (mend.change !== 'give to') return '';
  return mend.competence ? words.holds(mend.crew, mend.competence.join(', ')) : words.competence;
}

function mends(
  { mends: [first, ...rest] }: RosterBreach,
  words: PeopleStrings,
  accept: Accept,
): TemplateResult {
  if (!first) return html`${words.noMend}`;
  return html`${mendLine(first, words, accept)}
  ${
    rest.length > 0
      ? html`<details class="more">
          <summary>${words.more(rest.length)}</summary>
          <ul>
            ${rest.map((mend) => html`<li>${mendLine(mend, words, accept)}</li>`)}
          </ul>
        </details>`
      : nothing
  }`;
}

function mendLine(mend: Mend, words: PeopleStrings, accept: Accept): TemplateResult {
  const text = mendText(mend, words);
  const checked = checkedText(mend, words);
  return html`${text} ${checked ? html`<span class="source">${checked}</span>` : nothing}
  ${
    accept
      ? html`<button
          type="button"
          aria-label=${`${words.make}: ${text}`}
          @click=${() => accept([mend])}
        >
          ${words.make}
        </button>`
      : nothing
  }`;
}

import { html, nothing, type TemplateResult } from 'lit';
import type { PeopleAnswer } from '../../src/engine/index.js';
import { floatText } from '../shared/format.js';
import type { PeopleStrings } from './strings.js';

/** Turns during which the clocks change, with their real length and that by the clock; nothing where there is none. */
export function clockTurns(
  { turns }: PeopleAnswer,
  words: PeopleStrings,
): TemplateResult | typeof nothing {
  const odd = turns.filter((turn) => turn.elapsedMinutes !== turn.clockMinutes);
  if (odd.length === 0) return nothing;
  return html`<section>
    <h3>${words.clocks}</h3>
    <ul>
      ${odd.map(
        (turn) =>
          html`<li>
            ${words.clockTurn(turn.id, floatText(turn.elapsedMinutes), floatText(turn.clockMinutes))}
          </li>`,
      )}
    </ul>
  </section>`;
}

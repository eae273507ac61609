import { html, nothing, type TemplateResult } from 'lit';
import type { Objective } from '../../../src/planner/search/types.js';
import { answerOf } from './answer.js';
import { agreedView } from './agreed-view.js';
import type { Desk } from '../desk-parts.js';
import { grantedView } from './granted-view.js';
import { settleButton } from './plan-view.js';

/** Over the programme: the answer in one sentence, how far it holds, and the search for it. */
export function answerView(desk: Desk): TemplateResult | typeof nothing {
  const { planning, words } = desk;
  const answer = answerOf(desk);
  if (!answer) return nothing;
  return html`<section class="answer ${desk.folded ? 'folded' : ''}" aria-label=${words.answer}>
    <div class="said" role="status">
      <p class="sentence ${answer.harm ? 'harm' : ''}">${answer.sentence}</p>
      ${
        answer.proof === ''
          ? nothing
          : html`<p class="proof">
              ${answer.proof}
              ${
                planning.allocation
                  ? html`<button type="button" class="plain" @click=${() => prove(desk)}>
                      ${words.howGood}
                    </button>`
                  : nothing
              }
            </p>`
      }
      <button
        type="button"
        class="plain unfold"
        aria-expanded=${!desk.folded}
        @click=${() => {
          desk.folded = !desk.folded;
        }}
      >
        ${desk.folded ? words.unfold : words.fold}
      </button>
    </div>
    <div class="search">
      <label for="first">${words.first}</label>
      <select
        id="first"
        ?disabled=${planning.busy}
        @change=${(event: Event) => {
          planning.first = (event.target as HTMLSelectElement).value as Objective;
        }}
      >
        ${Object.entries(words.objective).map(
          ([value, text]) =>
            html`<option value=${value} ?selected=${value === planning.first}>${text}</option>`,
        )}
      </select>
      ${
        planning.busy
          ? html`${settleButton(desk)} ${progressBar(desk)}`
          : html`<button
              class=${planning.allocation ? '' : 'strong'}
              type="button"
              @click=${() => void desk.planNow()}
            >
              ${
                planning.allocation
                  ? desk.document?.agreed?.now
                    ? words.better
                    : words.anew
                  : words.make
              }
            </button>`
      }
    </div>
    <div class="rests">${agreedView(desk)} ${grantedView(desk)}</div>
  </section>`;
}

function progressBar({ planning: { progress }, words }: Desk): TemplateResult {
  return progress
    ? html`<progress
        aria-label=${words.searched}
        max=${progress.total}
        value=${progress.done}
      ></progress>`
    : html`<progress aria-label=${words.searched}></progress>`;
}

function prove({ picked, planning }: Desk): void {
  picked.explain((why) => planning.allocation && why.explainCertificate(planning.allocation));
}

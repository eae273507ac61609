import { html, nothing, type TemplateResult } from 'lit';
import type { Objective } from '../../src/planner/search/types.js';
import { explainCertificate } from '../why/explain-plan.js';
import { answerOf } from './answer.js';
import { agreedView } from './agreed-view.js';
import type { Desk } from './desk-parts.js';
import { grantedView } from './granted-view.js';
import { settleButton } from './plan-view.js';
import { objectives } from './views.js';

/** Over the programme: the answer in one sentence, how far it holds, and the search for it. */
export function answerView(desk: Desk): TemplateResult | typeof nothing {
  const { planning } = desk;
  const answer = answerOf(desk);
  if (!answer) return nothing;
  return html`<section class="answer ${desk.folded ? 'folded' : ''}" aria-label="The answer">
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
                      How good it is
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
        ${desk.folded ? 'Agree, plan anew, what is taken for granted' : 'Less of this'}
      </button>
    </div>
    <div class="search">
      <label for="first">First</label>
      <select
        id="first"
        ?disabled=${planning.busy}
        @change=${(event: Event) => {
          planning.first = (event.target as HTMLSelectElement).value as Objective;
        }}
      >
        ${Object.entries(objectives).map(
          ([value, text]) =>
            html`<option value=${value} ?selected=${value === planning.first}>${text}</option>`,
        )}
      </select>
      ${
        planning.busy
          ? html`${settleButton(desk)} ${progressBar(planning)}`
          : html`<button
              class=${planning.allocation ? '' : 'strong'}
              type="button"
              @click=${() => void desk.planNow()}
            >
              ${
                planning.allocation
                  ? desk.document?.agreed?.now
                    ? 'Look for a better plan'
                    : 'Plan it anew'
                  : 'Make a plan'
              }
            </button>`
      }
    </div>
    <div class="rests">${agreedView(desk)} ${grantedView(desk)}</div>
  </section>`;
}

function progressBar({ progress }: Desk['planning']): TemplateResult {
  return progress
    ? html`<progress
        aria-label="Time searched"
        max=${progress.total}
        value=${progress.done}
      ></progress>`
    : html`<progress aria-label="Time searched"></progress>`;
}

function prove({ picked, planning }: Desk): void {
  picked.tell(() => planning.allocation && explainCertificate(planning.allocation));
}

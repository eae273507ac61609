import { html, nothing, type TemplateResult } from 'lit';
import type { WhyLinkEvent } from '../../why/why-events.js';
import type { Desk } from '../desk-parts.js';
import { overview } from '../views/overview.js';
import { planSide } from '../views/plan-view.js';
import { windowSide } from '../views/windows-view.js';

/** Whether the panel has anything to say; else it folds away and the view has its room. */
export function hasSide(desk: Desk): boolean {
  const { view, picked, figures, planning } = desk;
  if (picked.explanation) return true;
  return view === 'windows' && figures.results !== null && planning.shown !== null;
}

/** The narrow panel: what can be done with the picked thing, and where the picked figure comes from. */
export function sideView(desk: Desk, up: () => void): TemplateResult {
  const { view, picked, planPart, words } = desk;
  return html`<aside aria-label=${words.why} tabindex="0">
    <button class="plain up" type="button" @click=${up}>${words.toTop}</button>
    ${
      picked.explanation
        ? html`<button class="shut" type="button" @click=${() => picked.close()}>
              ${words.close}
            </button>
            ${view === 'windows' ? windowSide(desk) : nothing}
            ${view === 'plan' && (planPart === 'plan' || planPart === 'where') ? planSide(desk) : nothing}
            <possession-why
              .explanation=${picked.explanation}
              @possession-why-link=${(event: WhyLinkEvent) => void desk.goTo(event.place)}
            ></possession-why>`
        : overview(desk)
    }
  </aside>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import type { WhyLinkEvent } from '../why/why-events.js';
import type { Desk } from './desk-parts.js';
import { filesSide } from './files-view.js';
import { planSide } from './plan-view.js';
import { wholeViews } from './views.js';
import { windowSide } from './windows-view.js';

/** The narrow panel: what can be done with the picked thing, and where the picked figure comes from. */
export function sideView(desk: Desk, up: () => void): TemplateResult {
  const { view, picked, planPart } = desk;
  return html`<aside aria-label="Where figures come from" tabindex="0">
    <button class="plain up" type="button" @click=${up}>Back to the top</button>
    ${
      wholeViews.includes(view)
        ? html`<button class="shut" type="button" @click=${() => picked.hush()}>Close</button>`
        : nothing
    }
    ${view === 'windows' ? windowSide(desk) : nothing}
    ${view === 'files' ? filesSide(desk) : nothing}
    ${view === 'plan' && planPart === 'plan' ? planSide(desk) : nothing}
    <possession-why
      ?hidden=${view === 'files' && !picked.told}
      .explanation=${picked.told}
      @possession-why-link=${(event: WhyLinkEvent) => void desk.goTo(event.place)}
    ></possession-why>
  </aside>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import { planId } from '../../src/engine/index.js';
import { countText, momentText } from '../shared/format.js';
import { agree, compareWith, forgetEarlier, goBackTo } from './agreed-plan.js';
import type { Desk } from './desk-parts.js';

/** The broken pieces named before the rest is only counted. */
const NAMED = 4;

/** Which plan the figures speak of, what of it no longer holds, and what can be accepted in its place. */
export function agreedView(desk: Desk): TemplateResult {
  return html`<div class="agreed" role="group" aria-label="The agreed plan">
    ${desk.document?.agreed?.now ? inForce(desk) : nothing} ${proposed(desk)} ${earlier(desk)}
  </div>`;
}

/** One line for views that speak of the plan without showing it. */
export function planLine({ document, planning }: Desk): TemplateResult | typeof nothing {
  const now = document?.agreed?.now;
  if (now)
    return html`<p class="agreed-line">
      Of the agreed plan ${now.revision}, ${now.name}, ${momentText(now.agreedAt, document.zone)}
      (${planId(now.placements)})${planning.broken.length > 0 ? '; some of it no longer holds' : ''}.
    </p>`;
  const { proposal } = planning;
  if (!proposal) return nothing;
  return html`<p class="agreed-line">
    Of a proposal (${planId(proposal.placements)}): no plan is agreed.
  </p>`;
}

function inForce(desk: Desk): TemplateResult {
  const { document, planning } = desk;
  const now = document!.agreed!.now!;
  const { broken } = planning;
  const activities = [...new Set(broken.map((one) => one.activity))];
  return html`<p>
      <strong>Agreed: ${now.name}</strong>, plan ${now.revision},
      ${momentText(now.agreedAt, document!.zone)}${now.by ? `, ${now.by}` : ''}
      <span class="quiet">${planId(now.placements)}</span>
    </p>
    ${
      broken.length === 0
        ? nothing
        : html`<div class="broken" role="alert">
            <p>
              The tables have changed since:
              ${countText(activities.length, 'activity', 'activities')} of it no longer
              ${activities.length === 1 ? 'holds' : 'hold'}. Nothing was moved.
            </p>
            <ul>
              ${broken.slice(0, NAMED).map((one) => html`<li>${one.text}</li>`)}
              ${broken.length > NAMED ? html`<li>and ${broken.length - NAMED} more</li>` : nothing}
            </ul>
            <button
              type="button"
              class="strong"
              ?disabled=${planning.busy}
              @click=${() => void desk.mend()}
            >
              Mend it with few moves
            </button>
          </div>`
    }`;
}

function proposed(desk: Desk): TemplateResult | typeof nothing {
  const { document, planning } = desk;
  const { proposal } = planning;
  if (!proposal || !document) return nothing;
  const now = document.agreed?.now;
  const id = planId(proposal.placements);
  if (now && planId(now.placements) === id)
    return html`<p class="quiet">
      The search found the agreed plan again.
      <button type="button" class="plain" @click=${() => planning.drop()}>Good</button>
    </p>`;
  const count = (document.agreed?.earlier.length ?? 0) + (now ? 2 : 1);
  return html`<form class="proposal" @submit=${(event: SubmitEvent) => accept(desk, event)}>
    <p>
      <strong>A proposal</strong>
      <span class="quiet">${id}</span>${now ? ', not yet agreed' : ': no plan is agreed yet'}
    </p>
    ${
      now
        ? html`<button
              type="button"
              aria-pressed=${planning.showsProposal}
              @click=${() => planning.look(!planning.showsProposal)}
            >
              ${planning.showsProposal ? 'Show the agreed plan' : 'Show the proposal'}
            </button>
            <button type="button" @click=${() => planning.drop()}>Let it go</button>`
        : nothing
    }
    <label>Name <input name="name" required maxlength="200" .value=${`Plan ${count}`} /></label>
    <label>Agreed by <input name="by" maxlength="200" autocomplete="name" /></label>
    <button type="submit" class="strong" ?disabled=${!proposal.certificate.verified}>
      Agree this plan
    </button>
  </form>`;
}

function accept(desk: Desk, event: SubmitEvent): void {
  event.preventDefault();
  const given = new FormData(event.target as HTMLFormElement);
  const { proposal } = desk.planning;
  if (!proposal) return;
  agree(desk, {
    name: String(given.get('name')).trim() || 'Plan',
    by: String(given.get('by') ?? '').trim(),
    placements: proposal.placements,
  });
}

function earlier(desk: Desk): TemplateResult | typeof nothing {
  const all = desk.document?.agreed?.earlier ?? [];
  if (all.length === 0) return nothing;
  return html`<details class="earlier">
    <summary>${countText(all.length, 'earlier plan')}</summary>
    <ul>
      ${all.map(
        (one) =>
          html`<li>
            ${one.revision}: ${one.name}, ${momentText(one.agreedAt, desk.document!.zone)}
            <span class="quiet">${planId(one.placements)}</span>
            <button type="button" @click=${() => void compareWith(desk, one)}>
              Compare with it
            </button>
            <button type="button" @click=${() => goBackTo(desk, one)}>Go back to it</button>
            <button type="button" @click=${() => forgetEarlier(desk, one)}>Take it out</button>
          </li>`,
      )}
    </ul>
  </details>`;
}

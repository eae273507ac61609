import { html, nothing, type TemplateResult } from 'lit';
import { dayFromText, startOfDay } from '../../src/calendar/index.js';
import { planId, proofOf } from '../../src/engine/index.js';
import { countText, dayText, momentText } from '../shared/format.js';
import { agree, compareWith, forgetEarlier, freeze, goBackTo } from './agreed-plan.js';
import type { Desk } from './desk-parts.js';

/** The broken pieces named before the rest is only counted. */
const NAMED = 4;

/** Which plan the figures speak of, what of it no longer holds, and what can be accepted in its place. */
export function agreedView(desk: Desk): TemplateResult {
  return html`<div class="agreed" role="group" aria-label="The agreed plan">
    ${desk.document?.agreed?.now ? inForce(desk) : nothing} ${proposed(desk)} ${more(desk)}
  </div>`;
}

/** One line for views that speak of the plan without showing it. */
export function planLine(desk: Desk): TemplateResult | typeof nothing {
  const text = planText(desk);
  return text === '' ? nothing : html`<p class="agreed-line">Figures of ${text}.</p>`;
}

/** Which plan the figures speak of: `the agreed plan 3, Spring, Mon 4 Jan 2027, 09:00`; empty where there is none. */
export function planText({ document, planning }: Desk): string {
  const now = document?.agreed?.now;
  if (now)
    return `the agreed plan ${now.revision}, ${now.name}, ${momentText(now.agreedAt, document.zone)}${planning.broken.length > 0 ? '; some of it no longer holds' : ''}`;
  return planning.proposal ? 'a proposal: no plan is agreed yet' : '';
}

function inForce(desk: Desk): TemplateResult {
  const { document, planning } = desk;
  const now = document!.agreed!.now!;
  const { broken } = planning;
  const activities = [...new Set(broken.map((one) => one.activity))];
  return html`<p>
      <strong>Agreed: ${now.name}</strong>, plan ${now.revision},
      ${momentText(now.agreedAt, document!.zone)}${now.by ? `, ${now.by}` : ''}${frozenText(desk)}
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
  return html`<div class="proposal">
    <p><strong>A proposal</strong>${now ? ', not yet agreed' : ': no plan is agreed yet'}</p>
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
    <details class="accept">
      <summary>Agree to it</summary>
      <form @submit=${(event: SubmitEvent) => accept(desk, event)}>
        <label>Name <input name="name" required maxlength="200" .value=${`Plan ${count}`} /></label>
        <label>Agreed by <input name="by" maxlength="200" autocomplete="name" /></label>
        <button type="submit" class="strong" ?disabled=${!proposal.certificate.verified}>
          Agree this plan
        </button>
        <span class="quiet">Known by ${id}</span>
      </form>
    </details>
  </div>`;
}

function accept(desk: Desk, event: SubmitEvent): void {
  event.preventDefault();
  const given = new FormData(event.target as HTMLFormElement);
  const { proposal } = desk.planning;
  if (!proposal) return;
  const proof = proofOf(proposal);
  agree(desk, {
    name: String(given.get('name')).trim() || 'Plan',
    by: String(given.get('by') ?? '').trim(),
    placements: proposal.placements,
    ...(proof && { proof }),
  });
}

/** What of the plan in force is frozen, in a few words; empty where nothing is. */
function frozenText({ document }: Desk): string {
  const until = document?.agreed?.frozenUntil;
  const day = until === undefined ? undefined : dayFromText(until);
  if (day === undefined) return '';
  return `, frozen until ${dayText(startOfDay(day, document!.zone), document!.zone)}`;
}

/** What is seldom wanted: freezing, the plans before, and what the plan is known by. */
function more(desk: Desk): TemplateResult | typeof nothing {
  const { document } = desk;
  const { now, earlier = [], frozenUntil } = document?.agreed ?? {};
  if (!document || (!now && earlier.length === 0)) return nothing;
  const title = [
    ...(now ? ['Freeze'] : []),
    ...(earlier.length > 0 ? [countText(earlier.length, 'earlier plan')] : []),
  ].join(', ');
  return html`<details class="earlier">
    <summary>${title}</summary>
    ${now ? freezeForm(desk, frozenUntil ?? '') : nothing}
    ${now ? html`<p class="quiet">The agreed plan is known by ${planId(now.placements)}.</p>` : nothing}
    <ul>
      ${earlier.map(
        (one) =>
          html`<li>
            ${one.revision}: ${one.name}, ${momentText(one.agreedAt, document.zone)}
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

function freezeForm(desk: Desk, until: string): TemplateResult {
  return html`<form
    class="freeze"
    @submit=${(event: SubmitEvent) => {
      event.preventDefault();
      freeze(desk, String(new FormData(event.target as HTMLFormElement).get('until') ?? ''));
    }}
  >
    <label
      >What begins before
      <input name="until" type="date" required .value=${until} />
    </label>
    <button type="submit">Freeze it</button>
    ${
      until === ''
        ? nothing
        : html`<button type="button" @click=${() => freeze(desk, '')}>Set all free</button>`
    }
    <span class="quiet">keeps its place in every search and every mending.</span>
  </form>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import { dayFromText, startOfDay } from '../../../src/calendar/index.js';
import { planId, proofOf } from '../../../src/engine/index.js';
import { dayText, momentText } from '../../shared/format.js';
import { agree, compareWith, forgetEarlier, freeze, goBackTo } from '../forms/agreed-plan.js';
import type { Desk } from '../desk-parts.js';
import { changing } from '../../shared/changing.js';
import { said } from '../../shared/said.js';

/** The broken pieces named before the rest is only counted. */
const NAMED = 4;

/** Which plan the figures speak of, what of it no longer holds, and what can be accepted in its place. */
export function agreedView(desk: Desk): TemplateResult {
  return html`<div class="agreed" role="group" aria-label=${desk.words.agreedTitle}>
    ${desk.document?.agreed?.now ? inForce(desk) : nothing} ${proposed(desk)} ${more(desk)}
  </div>`;
}

/** One line for views that speak of the plan without showing it. */
export function planLine(desk: Desk): TemplateResult | typeof nothing {
  const text = planText(desk);
  return text === '' ? nothing : html`<p class="agreed-line">${desk.words.figuresOf(text)}</p>`;
}

/** Which plan the figures speak of: `the agreed plan 3, Spring, Mon 4 Jan 2027, 09:00`; empty where there is none. */
export function planText({ document, planning, words }: Desk): string {
  const now = document?.agreed?.now;
  if (now)
    return `${words.agreedText(now.revision, now.name, momentText(now.agreedAt, document.zone))}${planning.broken.length > 0 ? words.someBroken : ''}`;
  return planning.proposal ? words.onlyProposal : '';
}

function inForce(desk: Desk): TemplateResult {
  const { document, planning, words } = desk;
  const now = document!.agreed!.now!;
  const { broken } = planning;
  const activities = [...new Set(broken.map((item) => item.activity))];
  return html`<p>
      <strong>${words.agreedName(now.name)}</strong>, ${words.planNumber(now.revision)},
      ${momentText(now.agreedAt, document!.zone)}${now.by ? `, ${now.by}` : ''}${frozenText(desk)}
    </p>
    ${
      broken.length === 0
        ? nothing
        : html`<div class="broken" role="alert">
            <p>${words.brokenTold(activities.length)}</p>
            <ul>
              ${broken.slice(0, NAMED).map((item) => html`<li>${said(item)}</li>`)}
              ${broken.length > NAMED ? html`<li>${words.moreBroken(broken.length - NAMED)}</li>` : nothing}
            </ul>
            <button
              type="button"
              class="strong"
              ?disabled=${planning.busy}
              @click=${() => void desk.mend()}
            >
              ${words.mend}
            </button>
          </div>`
    }`;
}

function proposed(desk: Desk): TemplateResult | typeof nothing {
  const { document, planning, words } = desk;
  const { proposal } = planning;
  if (!proposal || !document) return nothing;
  const now = document.agreed?.now;
  const id = planId(proposal.placements);
  if (now && planId(now.placements) === id)
    return html`<p class="quiet">
      ${words.foundAgain}
      <button type="button" class="plain" @click=${() => planning.drop()}>${words.good}</button>
    </p>`;
  const count = (document.agreed?.earlier.length ?? 0) + (now ? 2 : 1);
  return html`<div class="proposal">
    <p><strong>${words.proposal}</strong>${now ? words.notYetAgreed : words.noneAgreedYet}</p>
    ${
      now
        ? html`<button
              type="button"
              aria-pressed=${planning.showsProposal}
              @click=${() => planning.look(!planning.showsProposal)}
            >
              ${planning.showsProposal ? words.showAgreed : words.showProposal}
            </button>
            <button type="button" @click=${() => planning.drop()}>${words.letGo}</button>`
        : nothing
    }
    <details class="accept">
      <summary>${words.agreeTo}</summary>
      ${changing(
        desk.sharing.reads,
        html`<form @submit=${(event: SubmitEvent) => accept(desk, event)}>
          <label
            >${words.name}
            <input name="name" required maxlength="200" .value=${words.planName(count)}
          /></label>
          <label>${words.agreedBy} <input name="by" maxlength="200" autocomplete="name" /></label>
          <button type="submit" class="strong" ?disabled=${!proposal.certificate.verified}>
            ${words.agreeThis}
          </button>
          <span class="quiet">${words.knownBy(id)}</span>
        </form>`,
      )}
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
    name: String(given.get('name')).trim() || desk.words.planNumber(1),
    by: String(given.get('by') ?? '').trim(),
    placements: proposal.placements,
    ...(proof && { proof }),
  });
}

/** What of the plan in force is frozen, in a few words; empty where nothing is. */
function frozenText({ document, words }: Desk): string {
  const until = document?.agreed?.frozenUntil;
  const day = until === undefined ? undefined : dayFromText(until);
  if (day === undefined) return '';
  return words.frozenUntil(dayText(startOfDay(day, document!.zone), document!.zone));
}

/** What is seldom wanted: freezing, the plans before, and what the plan is known by. */
function more(desk: Desk): TemplateResult | typeof nothing {
  const { document, words } = desk;
  const { now, earlier = [], frozenUntil } = document?.agreed ?? {};
  if (!document || (!now && earlier.length === 0)) return nothing;
  const title = [
    ...(now ? [words.freezeTitle] : []),
    ...(earlier.length > 0 ? [words.earlierPlans(earlier.length)] : []),
  ].join(', ');
  return html`<details class="earlier">
    <summary>${title}</summary>
    ${now ? changing(desk.sharing.reads, freezeForm(desk, frozenUntil ?? '')) : nothing}
    ${now ? html`<p class="quiet">${words.agreedKnownBy(planId(now.placements))}</p>` : nothing}
    <ul>
      ${earlier.map(
        (item) =>
          html`<li>
            ${item.revision}: ${item.name}, ${momentText(item.agreedAt, document.zone)}
            <span class="quiet">${planId(item.placements)}</span>
            <button type="button" @click=${() => void compareWith(desk, item)}>
              ${words.compareWith}
            </button>
            ${changing(
              desk.sharing.reads,
              html`<button type="button" @click=${() => goBackTo(desk, item)}>
                  ${words.goBackTo}
                </button>
                <button type="button" @click=${() => forgetEarlier(desk, item)}>
                  ${words.takeOut}
                </button>`,
            )}
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
      >${desk.words.beginsBefore}
      <input name="until" type="date" required .value=${until} />
    </label>
    <button type="submit">${desk.words.freeze}</button>
    ${
      until === ''
        ? nothing
        : html`<button type="button" @click=${() => freeze(desk, '')}>
            ${desk.words.setFree}
          </button>`
    }
    <span class="quiet">${desk.words.frozenTold}</span>
  </form>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import { ref } from 'lit/directives/ref.js';
import { copyable } from './copyable.js';
import { mountWhenNear } from './mount.js';
import type { ElementFacts } from './manifest.js';
import { codeOf } from './specimen.js';
import { statesOf, type State } from './states.js';

/** One element: what it is, its states, its code. */
export function section(told: ElementFacts): TemplateResult {
  const { tag, summary, description, parts, own } = told;
  return html`<section id=${tag} aria-labelledby="${tag}-name">
    <h2 id="${tag}-name">&lt;${tag}&gt;</h2>
    <p>${summary}</p>
    ${description ? html`<p class="more">${description}</p>` : nothing}
    <div class="states">${statesOf(tag).map((state) => figure(told, state))}</div>
    ${copyable(codeOf(tag), `Code of ${tag}`)}
    ${
      parts.length + own.length > 0
        ? html`<p class="more">
            ${parts.length > 0 ? html`Parts to style: ${listed(parts)}. ` : nothing}
            ${own.length > 0 ? html`Tokens of its own: ${listed(own)}.` : nothing}
          </p>`
        : nothing
    }
  </section>`;
}

const listed = (all: readonly { readonly name: string }[]): TemplateResult[] =>
  all.map(({ name }, index) => html`${index > 0 ? ', ' : ''}<code>${name}</code>`);

function figure(told: ElementFacts, state: State): TemplateResult {
  const { narrow, dark, rightToLeft, german } = state.ground ?? {};
  const label = `${told.tag}: ${state.name.toLowerCase()}`;
  return html`<figure class=${narrow ? 'narrow' : ''}>
    <figcaption>${state.name}</figcaption>
    <div
      class="ground ${dark ? 'dark' : ''}"
      dir=${rightToLeft ? 'rtl' : nothing}
      lang=${german ? 'de' : nothing}
      role="region"
      aria-label=${label}
      tabindex="0"
      data-state=${state.name}
      ${ref((ground) => ground && mountWhenNear(ground as HTMLElement, told, state))}
    ></div>
    <p class="sent" role="status"></p>
  </figure>`;
}

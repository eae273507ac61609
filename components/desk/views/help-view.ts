import { html, nothing, type TemplateResult } from 'lit';
import type { Desk } from '../desk-parts.js';
import { placeIds } from '../views.js';

/** What the page is for, where things are, and the keys: inside the page, since it works without a network. */
export function helpView({ gallery, words }: Desk): TemplateResult {
  const control = html`<kbd>${words.control}</kbd>`;
  return html`<div class="help">
    <h2>${words.helpTitle}</h2>
    <p>${words.helpTold}</p>
    <h2>${words.beginOwn}</h2>
    <ol>
      ${words.beginSteps.map((step) => html`<li>${step}</li>`)}
    </ol>
    <h2>${words.whereThings}</h2>
    <dl>
      ${placeIds.map(
        (text) =>
          html`<dt>${words.place[text]}</dt>
            <dd>${words.placeTold[text]}</dd>`,
      )}
    </dl>
    <h2>${words.keys}</h2>
    <dl class="keys">
      <dt><kbd>←</kbd> <kbd>→</kbd></dt>
      <dd>${words.keysTold.places}</dd>
      <dt>${control}+<kbd>Z</kbd>, ${control}+<kbd>Y</kbd></dt>
      <dd>${words.keysTold.undo}</dd>
      <dt><kbd>/</kbd></dt>
      <dd>${words.keysTold.find}</dd>
      <dt><kbd>Esc</kbd></dt>
      <dd>${words.keysTold.close}</dd>
    </dl>
    <p>${words.tableKeys}</p>
    ${
      gallery === ''
        ? nothing
        : html`<h2>${words.ownPage}</h2>
            <p>${words.ownPageTold} <a href=${gallery}>${words.ownPageLink}</a>.</p>`
    }
    <h2>${words.wordsTitle}</h2>
    <dl>
      ${words.wordsTold.map(
        ([word, told]) =>
          html`<dt>${word}</dt>
            <dd>${told}</dd>`,
      )}
    </dl>
    <h2>${words.cautions}</h2>
    <ul>
      ${words.cautionLines.map((line) => html`<li>${line}</li>`)}
    </ul>
  </div>`;
}

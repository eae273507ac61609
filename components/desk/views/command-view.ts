import { html, type TemplateResult } from 'lit';
import { commandsFor, type Command } from '../frame/commands.js';
import type { Desk } from '../desk-parts.js';

/** A field to find anything by its name, and below it what was found. Arrows choose, Enter does it. */
export function commandView(desk: Desk): TemplateResult {
  const list = commandsFor(desk, desk.asked);
  const at = Math.min(desk.askedAt, list.length - 1);
  const run = (command: Command | undefined): void => {
    if (!command) return;
    desk.menu = '';
    command.run();
  };
  return html`<div class="commands">
    <label for="asked">${desk.words.findLabel}</label>
    <input
      id="asked"
      type="text"
      role="combobox"
      autocomplete="off"
      aria-expanded="true"
      aria-controls="found"
      aria-autocomplete="list"
      aria-activedescendant=${at >= 0 ? `found-${at}` : ''}
      .value=${desk.asked}
      @input=${(event: Event) => {
        desk.asked = (event.target as HTMLInputElement).value;
        desk.askedAt = 0;
      }}
      @keydown=${(event: KeyboardEvent) => {
        const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
        if (step !== undefined && list.length > 0)
          desk.askedAt = (at + step + list.length) % list.length;
        else if (event.key === 'Enter') run(list[at]);
        else return;
        event.preventDefault();
      }}
    />
    <ul id="found" role="listbox" aria-label=${desk.words.found}>
      ${list.map(
        (command, index) =>
          html`<li
            id="found-${index}"
            role="option"
            aria-selected=${index === at}
            @click=${() => run(command)}
          >
            ${command.text} <span class="quiet">${command.kind}</span>
          </li>`,
      )}
    </ul>
    ${list.length === 0 ? html`<p class="quiet" role="status">${desk.words.notFound}</p>` : ''}
  </div>`;
}

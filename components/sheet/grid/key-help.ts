import { html, type TemplateResult } from 'lit';
import { keyIds, keyTable, type KeyPlace, type KeyRule } from './key-table.js';
import type { SheetStrings } from '../strings.js';

const places: readonly KeyPlace[] = ['move', 'choose', 'change', 'typing', 'more'];
const signs: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
};

/** The list of keys, made from the key table. */
export function keyHelp(
  words: SheetStrings,
  readonly: boolean,
  closed: () => void,
): TemplateResult {
  const shown = (place: KeyPlace) =>
    keyIds.filter((id) => {
      const rule: KeyRule = keyTable[id];
      return rule.place === place && !(readonly && rule.edits);
    });
  return html`<dialog class="help" aria-label=${words.keys} @close=${closed} @keydown=${stopKeys}>
    <form method="dialog"><button>${words.close}</button></form>
    <div class="places">
      ${places
        .filter((place) => shown(place).length > 0)
        .map(
          (place) =>
            html`<section>
              <h3>${words.keyPlaces[place]}</h3>
              <dl>
                ${shown(place).map(
                  (id) =>
                    html`<div>
                      <dt>
                        ${keyTable[id].keys.map((key) => html`<kbd>${keyText(key, words.keyNames)}</kbd> `)}
                      </dt>
                      <dd>${words.keyActs[id]}</dd>
                    </div>`,
                )}
              </dl>
            </section>`,
        )}
    </div>
  </dialog>`;
}

/** `Ctrl+↑` */
export function keyText(key: string, names: SheetStrings['keyNames']): string {
  return key
    .split('+')
    .map((part) => signs[part] ?? names[part] ?? part)
    .join('+');
}

function stopKeys(event: KeyboardEvent): void {
  event.stopPropagation();
}

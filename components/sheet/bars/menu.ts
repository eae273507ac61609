import { html, nothing, type TemplateResult } from 'lit';
import type { Act, ActGroup } from '../edit/acts.js';
import type { SheetStrings } from '../strings.js';

/** Where a menu opens, in CSS pixels of the viewport. */
export interface MenuPlace {
  readonly x: number;
  readonly y: number;
  /** Whether to show only column actions. */
  readonly column: boolean;
}

const shortcuts: Partial<Record<Act, string>> = {
  edit: 'F2',
  cut: 'Ctrl+X',
  copy: 'Ctrl+C',
  paste: 'Ctrl+V',
  clear: 'Delete',
  fillDown: 'Ctrl+D',
  fillAcross: 'Ctrl+Shift+D',
};

/** Context menu of actions for the selected cells, as an alternative to keys. Closed by Escape or a press outside. */
export function menu(
  groups: readonly ActGroup[],
  words: SheetStrings,
  run: (act: Act) => void,
  closed: () => void,
): TemplateResult {
  return html`<div
    class="menu"
    role="menu"
    popover="auto"
    aria-label=${words.menu}
    @keydown=${onKey}
    @toggle=${(event: Event) => {
      if ((event as ToggleEvent).newState === 'closed') closed();
    }}
  >
    ${groups.map(
      (group) =>
        html`<div role="group" aria-label=${group.title}>
          <p class="title" aria-hidden="true">${group.title}</p>
          ${group.acts.map(
            (act) =>
              html`<button
                type="button"
                role="menuitem"
                tabindex="-1"
                data-act=${act}
                aria-keyshortcuts=${shortcuts[act]?.replaceAll('Ctrl', 'Control') ?? nothing}
                @click=${() => run(act)}
              >
                <span>${words.acts[act]}</span>${
                  shortcuts[act] ? html`<kbd aria-hidden="true">${shortcuts[act]}</kbd>` : nothing
                }
              </button>`,
          )}
        </div>`,
    )}
  </div>`;
}

/** Opens a rendered menu near a position, wholly within the viewport, with the focus on its first action. */
export function openMenu(element: HTMLElement, { x, y }: MenuPlace): void {
  if (typeof element.showPopover === 'function' && !element.matches(':popover-open'))
    element.showPopover();
  const { width, height } = element.getBoundingClientRect();
  const left = Math.max(4, Math.min(x, document.documentElement.clientWidth - width - 4));
  const top = Math.max(4, Math.min(y, window.innerHeight - height - 4));
  element.style.setProperty('left', `${left}px`);
  element.style.setProperty('top', `${top}px`);
  element.querySelector<HTMLElement>('[role=menuitem]')?.focus();
}

function onKey(event: KeyboardEvent): void {
  event.stopPropagation();
  const menu = event.currentTarget as HTMLElement;
  const items = [...menu.querySelectorAll<HTMLElement>('[role=menuitem]')];
  const at = items.indexOf(event.target as HTMLElement);
  const last = items.length - 1;
  const to: Partial<Record<string, number>> = {
    ArrowDown: at === last ? 0 : at + 1,
    ArrowUp: at <= 0 ? last : at - 1,
    Home: 0,
    End: last,
  };
  const next = to[event.key];
  if (next !== undefined) {
    event.preventDefault();
    items[next]?.focus();
  } else if (event.key === 'Tab' || event.key === 'Escape') {
    event.preventDefault();
    if (menu.matches(':popover-open')) menu.hidePopover();
  } else if (/^\p{L}$/u.test(event.key) && !event.ctrlKey && !event.metaKey) {
    const begins = (element: HTMLElement): boolean =>
      element.textContent.trim().toLowerCase().startsWith(event.key.toLowerCase());
    [...items.slice(at + 1), ...items.slice(0, at + 1)].find(begins)?.focus();
  }
}

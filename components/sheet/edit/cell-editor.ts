import { typingKey } from '../grid/key-table.js';

/** Where the focus goes after the edit is saved. */
export type Onward = 'down' | 'up' | 'on' | 'back' | 'stay';

export interface EditorOptions {
  readonly text: string;
  /** Accessible name: the heading and the line. */
  readonly label: string;
  /** Suggested texts; the person may type another. */
  readonly choices: readonly string[];
  readonly keep: (text: string, onward: Onward) => void;
  readonly leave: () => void;
}

/**
 * The editor of a cell, drawn in the cell over its text. The edit is saved whenever the field loses the focus; only
 * Escape discards it.
 */
export class CellEditor {
  readonly #options: EditorOptions;
  readonly #field: HTMLTextAreaElement | HTMLInputElement;
  readonly #list: HTMLElement | undefined;
  #picked = -1;
  #closed = false;

  constructor(cell: HTMLElement, options: EditorOptions) {
    this.#options = options;
    // A single-line field would lose line breaks in the cell; a multi-line field cannot offer choices.
    const offers = options.choices.length > 0 && !/[\r\n]/.test(options.text);
    this.#field = document.createElement(offers ? 'input' : 'textarea');
    this.#field.className = 'typing';
    this.#field.spellcheck = false;
    this.#field.autocapitalize = 'off';
    this.#field.autocomplete = 'off';
    this.#field.enterKeyHint = 'done';
    this.#field.setAttribute('aria-label', options.label);
    this.#field.value = options.text;
    this.#field.addEventListener('keydown', (event: Event) => this.#onKey(event as KeyboardEvent));
    this.#field.addEventListener('input', this.#onInput);
    this.#field.addEventListener('blur', () => this.#keep('stay'));
    for (const type of ['copy', 'cut', 'paste', 'click', 'dblclick', 'pointerdown', 'contextmenu'])
      this.#field.addEventListener(type, (event) => event.stopPropagation());
    cell.append(this.#field);
    if (offers) this.#list = this.#offer(cell);
    this.#field.focus({ preventScroll: true });
    this.#field.setSelectionRange(options.text.length, options.text.length);
    this.#grow();
  }

  /** Saves the edit as if the focus had moved away. */
  close(): void {
    this.#keep('stay');
  }

  get text(): string {
    return this.#field.value;
  }

  #offer(cell: HTMLElement): HTMLElement {
    const list = document.createElement('div');
    list.className = 'choices';
    list.id = 'choices';
    list.setAttribute('role', 'listbox');
    list.setAttribute('aria-label', this.#options.label);
    this.#field.setAttribute('role', 'combobox');
    this.#field.setAttribute('aria-autocomplete', 'list');
    this.#field.setAttribute('aria-controls', 'choices');
    // A press would move the focus and so end the edit before the click arrives.
    list.addEventListener('pointerdown', (event) => event.preventDefault());
    list.addEventListener('mousedown', (event) => event.preventDefault());
    list.addEventListener('click', (event) => {
      event.stopPropagation();
      const choice = (event.target as Element).closest('[role=option]');
      if (choice) this.#keep('stay', choice.textContent);
    });
    const scroller = cell.closest('.scroller');
    const room =
      (scroller?.getBoundingClientRect().bottom ?? 0) - cell.getBoundingClientRect().bottom;
    list.classList.toggle('above', room < 120);
    cell.append(list);
    this.#showChoices(list, this.#options.choices);
    return list;
  }

  #showChoices(list: HTMLElement, choices: readonly string[]): void {
    this.#picked = -1;
    this.#field.removeAttribute('aria-activedescendant');
    this.#field.setAttribute('aria-expanded', String(choices.length > 0));
    list.hidden = choices.length === 0;
    list.replaceChildren(
      ...choices.map((text, index) => {
        const choice = document.createElement('div');
        choice.id = `choice-${index}`;
        choice.setAttribute('role', 'option');
        choice.setAttribute('aria-selected', 'false');
        choice.textContent = text;
        return choice;
      }),
    );
  }

  #pick(step: 1 | -1): void {
    const options = [...(this.#list?.children ?? [])];
    if (options.length === 0) return;
    options[this.#picked]?.setAttribute('aria-selected', 'false');
    const last = options.length - 1;
    const next = this.#picked + step;
    this.#picked = next < 0 ? last : next > last ? 0 : next;
    const choice = options[this.#picked]!;
    choice.setAttribute('aria-selected', 'true');
    choice.scrollIntoView({ block: 'nearest' });
    this.#field.setAttribute('aria-activedescendant', choice.id);
  }

  #grow(): void {
    if (this.#field instanceof HTMLInputElement) return;
    const lines = this.#field.value.split('\n').length;
    this.#field.rows = Math.min(8, lines);
  }

  readonly #onInput = (): void => {
    this.#grow();
    if (!this.#list) return;
    const typed = this.#field.value.trim().toLowerCase();
    const fitting = this.#options.choices.filter((choice) => choice.toLowerCase().includes(typed));
    this.#showChoices(this.#list, fitting);
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.isComposing) return;
    const choosing = this.#list && !this.#list.hidden;
    if (choosing && (event.key === 'ArrowDown' || event.key === 'ArrowUp')) {
      event.preventDefault();
      this.#pick(event.key === 'ArrowDown' ? 1 : -1);
      return;
    }
    const key = typingKey(event);
    if (key === undefined) return;
    event.preventDefault();
    if (key === 'leave') {
      this.#close();
      this.#options.leave();
    } else if (key === 'newLine') {
      const field = this.#field;
      if (field instanceof HTMLInputElement) return;
      field.setRangeText('\n', field.selectionStart, field.selectionEnd, 'end');
      this.#grow();
    } else {
      const onward = { keepDown: 'down', keepUp: 'up', keepOn: 'on', keepBack: 'back' } as const;
      if (key in onward) {
        const choice = this.#list?.children[this.#picked]?.textContent;
        this.#keep(onward[key as keyof typeof onward], choice);
      }
    }
  };

  #keep(onward: Onward, text: string | null = null): void {
    if (this.#closed) return;
    const typed = text ?? this.#field.value;
    this.#close();
    this.#options.keep(typed, onward);
  }

  #close(): void {
    this.#closed = true;
    this.#list?.remove();
    this.#field.remove();
  }
}

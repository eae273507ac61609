import type { AccessWindow } from '../../src/model/index.js';

/** Longest pause between letters of one search word, in milliseconds. */
const WORD_PAUSE = 800;

/** Keyboard selection in the list of windows: arrows, Home, End, page keys, and the first letters of a name. */
export class ListKeys {
  #typed = '';
  #last = 0;

  /**
   * Index of the window a key goes to; `undefined` when the key is none of the list's.
   * @param page Rows a page key moves by; 0: page keys are the browser's.
   * @see ARIA Authoring Practices Guide, W3C, "Listbox Pattern" (from memory).
   */
  to(
    event: KeyboardEvent,
    at: number,
    windows: readonly AccessWindow[],
    page: number,
  ): number | undefined {
    if (event.ctrlKey || event.metaKey || event.altKey || windows.length === 0) return undefined;
    const last = windows.length - 1;
    const within = (place: number): number => Math.max(0, Math.min(last, place));
    switch (event.key) {
      case 'ArrowUp':
        return within(at - 1);
      case 'ArrowDown':
        return within(at + 1);
      case 'Home':
        return 0;
      case 'End':
        return last;
      case 'PageUp':
        return page > 0 ? within(at - page) : undefined;
      case 'PageDown':
        return page > 0 ? within(at + page) : undefined;
      case 'Enter':
        return within(at);
      case ' ':
        if (!this.#within(event)) return within(at);
    }
    return event.key.length === 1 ? this.#named(event, at, windows) : undefined;
  }

  #within(event: KeyboardEvent): boolean {
    return this.#typed !== '' && event.timeStamp - this.#last < WORD_PAUSE;
  }

  /** The next window whose name begins with what was typed. Repeating a letter cycles through its windows. */
  #named(event: KeyboardEvent, at: number, windows: readonly AccessWindow[]): number | undefined {
    this.#typed = (this.#within(event) ? this.#typed : '') + event.key.toLowerCase();
    this.#last = event.timeStamp;
    const same = [...this.#typed].every((text) => text === this.#typed[0]);
    const begins = (place: number, text: string): boolean => {
      const { id, title } = windows[place]!;
      return id.toLowerCase().startsWith(text) || title.toLowerCase().startsWith(text);
    };
    const search = (text: string, from: number): number | undefined => {
      for (let step = 0; step < windows.length; step += 1) {
        const place = (from + step) % windows.length;
        if (begins(place, text)) return place;
      }
      return undefined;
    };
    const whole = search(this.#typed, this.#typed.length === 1 ? at + 1 : at);
    return whole ?? (same ? search(this.#typed[0]!, at + 1) : undefined);
  }
}

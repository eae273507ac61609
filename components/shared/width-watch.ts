import type { ReactiveController, ReactiveControllerHost } from 'lit';

type WatchedHost = ReactiveControllerHost & HTMLElement & { readonly renderRoot?: ParentNode };

/** Keeps the width of one part of an element, in CSS pixels, and asks for a new drawing when it changes. */
export class WidthWatch implements ReactiveController {
  /** The last width seen; the guess before the first drawing. */
  width: number;
  readonly #host: WatchedHost;
  readonly #selector: string;
  #observer: ResizeObserver | undefined;
  #watched: Element | undefined;

  constructor(host: WatchedHost, selector: string, guess: number) {
    this.#host = host;
    this.#selector = selector;
    this.width = guess;
    host.addController(this);
  }

  hostUpdated(): void {
    const part = this.#host.renderRoot?.querySelector(this.#selector) ?? undefined;
    if (part === this.#watched) return;
    this.hostDisconnected();
    if (!part) return;
    this.#watched = part;
    this.#observer = new ResizeObserver(([entry]) => {
      const width = Math.round(entry?.contentRect.width ?? 0);
      if (width === 0 || width === this.width) return;
      this.width = width;
      this.#host.requestUpdate();
    });
    this.#observer.observe(part);
  }

  hostDisconnected(): void {
    this.#observer?.disconnect();
    this.#observer = undefined;
    this.#watched = undefined;
  }

  hostConnected(): void {
    this.#host.requestUpdate();
  }
}

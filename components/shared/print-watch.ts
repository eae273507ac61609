import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Knows when the page is being printed, and draws the host anew before the paper is laid out: pictures of a fixed width
 * have to be those of the sheet, and long lists need tables whose headings come again on each sheet.
 */
export class PrintWatch implements ReactiveController {
  printing = false;
  #media: MediaQueryList | undefined;
  readonly #host: ReactiveControllerHost;
  readonly #flush: () => void;

  /** @param flush Carries out a pending update at once: `() => this.performUpdate()`, which only the host may call. */
  constructor(host: ReactiveControllerHost, flush: () => void) {
    this.#host = host;
    this.#flush = flush;
    host.addController(this);
  }

  hostConnected(): void {
    globalThis.addEventListener?.('beforeprint', this.#before);
    globalThis.addEventListener?.('afterprint', this.#after);
    // Some browsers, and previews, tell of paper only in this way.
    this.#media = globalThis.matchMedia?.('print');
    this.#media?.addEventListener('change', this.#changed);
  }

  hostDisconnected(): void {
    globalThis.removeEventListener?.('beforeprint', this.#before);
    globalThis.removeEventListener?.('afterprint', this.#after);
    this.#media?.removeEventListener('change', this.#changed);
    this.printing = false;
  }

  readonly #before = (): void => this.#turn(true);
  readonly #after = (): void => this.#turn(false);
  readonly #changed = (event: MediaQueryListEvent): void => this.#turn(event.matches);

  #turn(printing: boolean): void {
    if (printing === this.printing) return;
    this.printing = printing;
    this.#host.requestUpdate();
    this.#flush();
  }
}

import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** The stretch of an element that can be seen, in pixels from its own start edges; empty where `end` is not above `start`. */
export interface Sight {
  readonly blockStart: number;
  readonly blockEnd: number;
  readonly inlineStart: number;
  readonly inlineEnd: number;
}

/** What an element stands in as it is drawn, through slots and shadow roots. */
function parentOf(node: Node): Element | null {
  const into = (node as Element).assignedSlot ?? node.parentNode;
  return into instanceof ShadowRoot ? into.host : into instanceof Element ? into : null;
}

function ancestorsOf(element: Element): Element[] {
  const found: Element[] = [];
  for (let at = parentOf(element); at; at = parentOf(at)) found.push(at);
  return found;
}

function isPage(element: Element): boolean {
  return element === document.documentElement || element === document.body;
}

/** What of an element is in sight: in the page's view, and in every part of the page that scrolls or cuts off. */
export function sightOf(element: Element): Sight {
  const box = element.getBoundingClientRect();
  const root = document.documentElement;
  let [top, left, bottom, right] = [0, 0, root.clientHeight, root.clientWidth];
  for (const ancestor of ancestorsOf(element)) {
    if (isPage(ancestor) || getComputedStyle(ancestor).overflow === 'visible') continue;
    const cut = ancestor.getBoundingClientRect();
    top = Math.max(top, cut.top);
    left = Math.max(left, cut.left);
    bottom = Math.min(bottom, cut.bottom);
    right = Math.min(right, cut.right);
  }
  const backwards = getComputedStyle(element).direction === 'rtl';
  const within = (pixel: number, size: number): number => Math.min(size, Math.max(0, pixel));
  return {
    blockStart: within(top - box.top, box.height),
    blockEnd: within(bottom - box.top, box.height),
    inlineStart: within(backwards ? box.right - right : left - box.left, box.width),
    inlineEnd: within(backwards ? box.right - left : right - box.left, box.width),
  };
}

/**
 * Scrolls what an element stands in as little as shows it, but never the page: a choice made elsewhere must not take
 * the reader away from where it was made.
 * @param cover Pixels at the start edges that something fixed covers.
 */
export function bringIntoSight(
  element: Element,
  cover: { readonly block: number; readonly inline: number },
): void {
  for (const ancestor of ancestorsOf(element)) {
    if (isPage(ancestor)) return;
    const { overflowX, overflowY, direction } = getComputedStyle(ancestor);
    const outer = ancestor.getBoundingClientRect();
    const inner = element.getBoundingClientRect();
    const top = outer.top + ancestor.clientTop;
    if (scrolls(overflowY) && ancestor.scrollHeight > ancestor.clientHeight)
      ancestor.scrollTop += needed(
        inner.top - top - cover.block,
        inner.bottom - top - ancestor.clientHeight,
      );
    const left = outer.left + ancestor.clientLeft;
    const [before, after] = direction === 'rtl' ? [0, cover.inline] : [cover.inline, 0];
    if (scrolls(overflowX) && ancestor.scrollWidth > ancestor.clientWidth)
      ancestor.scrollLeft += needed(
        inner.left - left - before,
        inner.right - left - ancestor.clientWidth + after,
      );
  }
}

function scrolls(overflow: string): boolean {
  return overflow === 'auto' || overflow === 'scroll';
}

/** How far to go, given how far the start is beyond the start and the end beyond the end. */
function needed(start: number, end: number): number {
  if (start < 0) return start;
  return end > 0 ? Math.min(end, start) : 0;
}

/**
 * Tells when something else of the host may have come into sight: whatever it stands in has scrolled or changed its
 * size. The callback runs in the frame of the scroll, before it is drawn.
 */
export class SightWatch implements ReactiveController {
  readonly #host: ReactiveControllerHost & Element;
  readonly #moved: () => void;
  #roots: EventTarget[] = [];
  #observer: ResizeObserver | undefined;

  constructor(host: ReactiveControllerHost & Element, moved: () => void) {
    this.#host = host;
    this.#moved = moved;
    host.addController(this);
  }

  hostConnected(): void {
    if (typeof ResizeObserver === 'undefined') return;
    const around = [this.#host, ...ancestorsOf(this.#host)];
    this.#observer = new ResizeObserver(() => this.#moved());
    for (const element of around) this.#observer.observe(element);
    // A scroll is told only within the root it happens in.
    this.#roots = [
      ...new Set<EventTarget>(around.map((element) => element.getRootNode())),
      ...(this.#host.shadowRoot ? [this.#host.shadowRoot] : []),
    ];
    for (const root of this.#roots)
      root.addEventListener('scroll', this.#moved, { capture: true, passive: true });
    globalThis.addEventListener('resize', this.#moved);
  }

  hostDisconnected(): void {
    this.#observer?.disconnect();
    this.#observer = undefined;
    for (const root of this.#roots)
      root.removeEventListener('scroll', this.#moved, { capture: true });
    this.#roots = [];
    globalThis.removeEventListener('resize', this.#moved);
  }
}

import { PlacementMoveEvent } from './placement-move-event.js';

/** How far the pointer goes before a press is a drag and no click, in pixels. */
const SLACK = 6;

interface Host extends HTMLElement {
  readonly movable: boolean;
  readonly renderRoot: ParentNode;
}

/** A piece of work taken by the pointer and let go over another window. Escape, or its own window, changes nothing. */
export class PieceDrag {
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
  }

  begin(down: PointerEvent, index: number, from: string): void {
    if (!this.#host.movable || down.button !== 0) return;
    const piece = down.currentTarget as Element;
    const over = new AbortController();
    const { signal } = over;
    let target: Element | null = null;
    const mark = (next: Element | null): void => {
      target?.classList.remove('drop');
      target = next;
      target?.classList.add('drop');
    };
    const end = (): void => {
      mark(null);
      piece.classList.remove('dragged');
      over.abort();
    };
    const onMove = (event: PointerEvent): void => {
      if (Math.hypot(event.clientX - down.clientX, event.clientY - down.clientY) < SLACK) return;
      piece.classList.add('dragged');
      const under = this.#windowAt(event);
      mark(under?.dataset['window'] === from ? null : under);
    };
    const onUp = (): void => {
      const to = (target as HTMLElement | null)?.dataset['window'];
      end();
      if (to !== undefined) this.#host.dispatchEvent(new PlacementMoveEvent(index, to));
    };
    window.addEventListener('pointermove', onMove, { signal });
    window.addEventListener('pointerup', onUp, { signal });
    window.addEventListener('pointercancel', end, { signal });
    window.addEventListener('keydown', (event) => event.key === 'Escape' && end(), { signal });
  }

  #windowAt({ clientX, clientY }: PointerEvent): HTMLElement | null {
    const all = this.#host.renderRoot.querySelectorAll<HTMLElement>('[data-window]');
    return (
      [...all].find((element) => {
        const { left, right, top, bottom } = element.getBoundingClientRect();
        return clientX >= left && clientX < right && clientY >= top && clientY < bottom;
      }) ?? null
    );
  }
}

export interface Frames {
  readonly median: number;
  readonly p95: number;
  readonly max: number;
}

/** Median, 95th percentile and most of some times. */
export function spread(times: readonly number[]): Frames {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { median: at(0.5), p95: at(0.95), max: sorted.at(-1)! };
}

/** Frame times in milliseconds while an element scrolls 240 steps, every fortieth of them a jump. */
export async function frames(
  scroller: HTMLElement,
  axis: 'scrollTop' | 'scrollLeft' = 'scrollTop',
): Promise<Frames> {
  const next = (): Promise<number> => new Promise(requestAnimationFrame);
  const end =
    axis === 'scrollTop'
      ? scroller.scrollHeight - scroller.clientHeight
      : scroller.scrollWidth - scroller.clientWidth;
  const times: number[] = [];
  let last = await next();
  for (let step = 1; step <= 240; step += 1) {
    const to = step % 40 === 0 ? step * 5_000 : scroller[axis] + 170;
    scroller[axis] = to % end;
    const now = await next();
    times.push(now - last);
    last = now;
  }
  return spread(times);
}

/** A scroller of the same size with nothing in it: what the machine takes for scrolling alone. */
export function emptyScroller(height: number, within = 1_500_000): HTMLElement {
  const outer = document.createElement('div');
  outer.style.setProperty('overflow', 'auto');
  outer.style.setProperty('height', `${height}px`);
  const inner = document.createElement('div');
  inner.style.setProperty('height', `${within}px`);
  inner.style.setProperty('width', `${within}px`);
  outer.append(inner);
  return outer;
}

/** The better of two by the 95th percentile: a busy machine disturbs either. */
export function better(all: readonly Frames[]): Frames {
  return all.reduce((a, b) => (b.p95 < a.p95 ? b : a));
}

import type { MarginVerdict, WindowVerdict } from './types.js';

export function marginVerdictOf(marginMinutes: number, requiredMinutes: number): MarginVerdict {
  if (marginMinutes < 0) return 'overrun';
  return marginMinutes >= requiredMinutes ? 'held' : 'eaten';
}

/** The one verdict of a window. Without a chance wanted it speaks of the margin alone. */
export function windowVerdictOf(
  margin: MarginVerdict,
  onTime: number,
  chanceWanted: number | null,
): WindowVerdict {
  return margin === 'held' && chanceWanted !== null && onTime < chanceWanted
    ? 'chance-low'
    : margin;
}

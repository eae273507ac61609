import { canShow } from './chance-text.js';
import type { MarginVerdict, WindowVerdict } from './types.js';

export function marginVerdictOf(marginMinutes: number, requiredMinutes: number): MarginVerdict {
  if (marginMinutes < 0) return 'overrun';
  return marginMinutes >= requiredMinutes ? 'held' : 'eaten';
}

/** Whether the share of on-time runs reaches the chance wanted, and there are runs enough to show it. */
export const reachesChance = (onTime: number, wanted: number, runs: number): boolean =>
  onTime >= wanted && canShow(wanted, runs);

/** The one verdict of a window. Without a chance wanted it speaks of the margin alone. */
export function windowVerdictOf(
  margin: MarginVerdict,
  onTime: number,
  chanceWanted: number | null,
  runs = Infinity,
): WindowVerdict {
  return margin === 'held' && chanceWanted !== null && !reachesChance(onTime, chanceWanted, runs)
    ? 'chance-low'
    : margin;
}

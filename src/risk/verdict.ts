import { canShow } from './chance-text.js';
import type { MarginVerdict, WindowVerdict } from './types.js';

export function marginVerdictOf(marginMinutes: number, requiredMinutes: number): MarginVerdict {
  if (marginMinutes < 0) return 'overrun';
  return marginMinutes >= requiredMinutes ? 'held' : 'eaten';
}

/** Whether the share of on-time runs reaches the chance wanted, and there are runs enough to show it. */
export const reachesChance = (onTime: number, wanted: number, runs: number): boolean =>
  onTime >= wanted && canShow(wanted, runs);

/** So many standard errors from the chance wanted, and other runs than these hardly say otherwise. */
const SURE = 2.5;

/** The chance above which other runs of that many hardly fall short of the one wanted. */
export const surelyReaching = (wanted: number, runs: number): number =>
  wanted + SURE * Math.sqrt((wanted * (1 - wanted)) / runs);

/** Whether the chance found is so close to the one wanted that other runs may well say otherwise. */
export const isClose = (onTime: number, wanted: number, runs: number): boolean =>
  Math.abs(onTime - wanted) < surelyReaching(wanted, runs) - wanted;

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

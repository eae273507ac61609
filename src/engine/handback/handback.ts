import type { Plan } from '../../model/index.js';
import { handback, shiftState, type HandbackResult } from '../../risk/index.js';
import type { HandbackProgress, HandbackRequest } from '../types.js';

/**
 * The handback outlook of the windows that take work, in plan order.
 *
 * @throws {RangeError} When a placement names no activity of the plan.
 */
export function handbackOf(
  plan: Plan,
  { placements, windows, log, ...options }: HandbackRequest,
  shouldStop: () => boolean = () => false,
  onProgress?: (progress: HandbackProgress) => void,
): readonly HandbackResult[] {
  const seen =
    log && options.at !== undefined ? { actuals: shiftState(log, options.at).actuals } : {};
  const used = new Set(placements.map((placement) => placement.window));
  const asked = plan.windows.filter(({ id }) => used.has(id) && (windows?.includes(id) ?? true));
  return asked.map((window, index) => {
    const latest = handback(plan, window, placements, { ...options, ...seen, shouldStop });
    onProgress?.({ done: index + 1, total: asked.length, latest });
    return latest;
  });
}

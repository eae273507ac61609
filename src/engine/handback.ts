import type { PlanDocument } from '../model/index.js';
import { handback, shiftState, type HandbackResult } from '../risk/index.js';
import { planFromDocument } from '../tables/index.js';
import type { HandbackRequest, Progress } from './types.js';

/**
 * The handback outlook of the windows that take work, in plan order.
 *
 * @throws {RangeError} When a placement names no activity of the plan.
 */
export function handbackOf(
  document: PlanDocument,
  { placements, windows, log, ...options }: HandbackRequest,
  shouldStop: () => boolean = () => false,
  onProgress?: (progress: Progress) => void,
): readonly HandbackResult[] {
  const { plan } = planFromDocument(document);
  const seen =
    log && options.at !== undefined ? { actuals: shiftState(log, options.at).actuals } : {};
  const used = new Set(placements.map((one) => one.window));
  const asked = plan.windows.filter(({ id }) => used.has(id) && (windows?.includes(id) ?? true));
  return asked.map((window, index) => {
    const result = handback(plan, window, placements, { ...options, ...seen, shouldStop });
    onProgress?.({ done: index + 1, total: asked.length });
    return result;
  });
}

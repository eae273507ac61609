import type { AccessWindow, Plan } from '../model/index.js';

/** The window that a request names. @throws {RangeError} When the plan has none of that id. */
export function namedWindow(plan: Plan, id: string): AccessWindow {
  const window = plan.windows.find((item) => item.id === id);
  if (!window) throw new RangeError(`there is no window "${id}" in the plan`);
  return window;
}

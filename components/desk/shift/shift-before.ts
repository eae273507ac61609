import { begunBy, shiftState } from '../../../src/engine/index.js';
import type { Desk } from '../desk-parts.js';
import { readShift } from './shift-store.js';

/** Activities that the logs of earlier windows kept on this device say were begun: their makers-good are never left out. */
export function begunInEarlierShifts(
  { keeping, document, picked, figures }: Desk,
  at: number,
): readonly string[] {
  const plan = figures.results?.plan;
  const own = plan?.windows.find((window) => window.id === picked.window);
  if (!plan || !own || !document) return [];
  return plan.windows
    .filter((window) => window.start < own.start)
    .flatMap((window) => {
      const log = readShift(
        { id: keeping.id, name: document.name, start: window.start },
        window.id,
      );
      return log.length === 0 ? [] : begunBy(plan.activities, shiftState(log, at).actuals, at);
    });
}

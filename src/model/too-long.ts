// Whoever shows a sheet loads this: it asks for no more of the model than the limit.
import { sizeLimits } from './size-limits.js';

/** Most characters of a text that is typed. */
export const mostTyped = sizeLimits.typed;

/** Length of the first text in a value that is longer than what is typed may be, in characters; undefined: there is none. */
export function tooLong(value: unknown): number | undefined {
  if (typeof value === 'string') return value.length > mostTyped ? value.length : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const inner of Object.values(value)) {
    const found = tooLong(inner);
    if (found !== undefined) return found;
  }
  return undefined;
}

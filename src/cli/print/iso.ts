import { isoText, type Instant } from '../../calendar/index.js';

/** A moment for JSON: ISO 8601 with offset; null stays null. */
export function iso(at: Instant | null, zone: string): string | null {
  return at === null ? null : isoText(at, zone);
}

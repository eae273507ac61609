// A window that is cut takes the times of its isolation with it: what lies outside is clipped, never left to be a fault.
import { isoText, localText, localTimeOf, type Instant } from '../calendar/index.js';
import type { AccessWindow } from '../model/index.js';
import { spanOf } from './parse/span.js';
import { parseMoment, type DateOrder } from './parse/written-moment.js';

export interface CutIsolation {
  /** The cell as it is to be. */
  readonly text: string;
  /** Sections whose times end before the window starts, or start after it ends: they are not dead in it any more. */
  readonly lost: readonly string[];
}

/**
 * The isolation cell of a window once it starts and ends as typed; `undefined` where no section has times of its own,
 * where all of them stay as they are, where the window moves to another time altogether, or where the new start and end cannot be read, which is told as a fault of theirs.
 */
export function isolationCut(
  window: AccessWindow,
  start: string,
  end: string,
  order: DateOrder = 'day-first',
): CutIsolation | undefined {
  if (!window.isolation.some((one) => one.during)) return undefined;
  const [from, to] = [parseMoment(start.trim(), order), parseMoment(end.trim(), order)];
  if ('problem' in from || 'problem' in to) return undefined;
  const span = spanOf(from.value, to.value, window.zone);
  if ('problem' in span) return undefined;
  const becomes = span.value;
  if (becomes.start === window.start && becomes.end === window.end) return undefined;
  // Moved to another night it is no cut: times of day hold there as they stand.
  if (becomes.end <= window.start || becomes.start >= window.end) return undefined;
  const lost: string[] = [];
  const parts = window.isolation.flatMap(({ section, during }) => {
    if (!during) return [section];
    const first = Math.max(during.start, becomes.start);
    const last = Math.min(during.end, becomes.end);
    if (last > first)
      return [`${section} [${momentText(first, window.zone)} - ${momentText(last, window.zone)}]`];
    lost.push(section);
    return [];
  });
  return { text: parts.join('; '), lost };
}

/** A moment with its date and offset, which means the same whatever the window starts with. */
const momentText = (at: Instant, zone: string): string =>
  `${localText(localTimeOf(at, zone))}${isoText(at, zone).slice(-6)}`;

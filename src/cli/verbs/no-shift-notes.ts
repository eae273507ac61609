import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Note, Plan } from '../../model/index.js';
import { clockWords } from '../../calendar/clock-words.js';

/**
 * Why windows open at the moment have no forecast; if none is open, which window is next and which was last.
 *
 * @param inAnswer Windows that have a forecast.
 */
export function noShiftNotes(
  plan: Plan,
  inAnswer: ReadonlySet<string>,
  at: Instant,
): readonly Note[] {
  const when = (moment: Instant, { zone }: AccessWindow): string => clockWords(moment, zone);
  const note = (text: string): Note => ({ code: 'no-shift', text });
  const open = plan.windows.filter((window) => window.start <= at && at < window.end);
  const without = open
    .filter((window) => !inAnswer.has(window.id))
    .map((window) =>
      note(
        window.status === 'withdrawn'
          ? `${window.id} is withdrawn: it has no shift and no forecast.`
          : `${window.id} is open and no work is planned in it: there is nothing to forecast.`,
      ),
    );
  const late = plan.windows
    .filter((window) => inAnswer.has(window.id) && window.end <= at)
    .map((window) =>
      note(`The booked end of ${window.id}, ${when(window.end, window)}, has passed.`),
    );
  if (inAnswer.size > 0 || open.length > 0) return [...without, ...late];
  const standing = plan.windows.filter((window) => window.status !== 'withdrawn');
  const [next] = standing.filter((window) => window.start > at).sort((a, b) => a.start - b.start);
  const [last] = standing.filter((window) => window.end <= at).sort((a, b) => b.end - a.end);
  return [
    note(
      [
        `No window is open at ${clockWords(at, plan.zone)}, so there is no forecast.`,
        ...(last ? [`${last.id} ended ${when(last.end, last)}.`] : []),
        ...(next ? [`${next.id} opens ${when(next.start, next)}.`] : []),
      ].join(' '),
    ),
  ];
}

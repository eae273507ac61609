import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Note, Plan } from '../../model/index.js';
import { clockWords } from '../../calendar/clock-words.js';

/**
 * Why windows that are open at the moment asked about have no forecast; or, where none is open, which comes next and
 * which came last.
 *
 * @param inAnswer Windows that have a forecast.
 */
export function noShiftNotes(plan: Plan, inAnswer: ReadonlySet<string>, at: Instant): readonly Note[] {
  const when = (moment: Instant, { zone }: AccessWindow): string => clockWords(moment, zone);
  const note = (text: string): Note => ({ code: 'no-shift', text });
  const open = plan.windows.filter((one) => one.start <= at && at < one.end);
  const without = open
    .filter((one) => !inAnswer.has(one.id))
    .map((one) =>
      note(
        one.status === 'withdrawn'
          ? `${one.id} is withdrawn: it has no shift and no forecast.`
          : `${one.id} is open and no work is planned in it: there is nothing to forecast.`,
      ),
    );
  const late = plan.windows
    .filter((one) => inAnswer.has(one.id) && one.end <= at)
    .map((one) => note(`The booked end of ${one.id}, ${when(one.end, one)}, has passed.`));
  if (inAnswer.size > 0 || open.length > 0) return [...without, ...late];
  const standing = plan.windows.filter((one) => one.status !== 'withdrawn');
  const [next] = standing.filter((one) => one.start > at).sort((a, b) => a.start - b.start);
  const [last] = standing.filter((one) => one.end <= at).sort((a, b) => b.end - a.end);
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

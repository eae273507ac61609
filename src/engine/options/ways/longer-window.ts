import { clockWords } from '../../../calendar/clock-words.js';
import { addMinutes, durationText } from '../../../calendar/index.js';
import { sitePlan } from '../../site/site-plan.js';
import type { Draft } from '../draft.js';
import { cellOf, withCells } from '../edits.js';
import type { Situation } from '../situation.js';
import { bookingOf } from './booking.js';

/** The same work in a window that ends later. */
export function longerWindow(at: Situation): Draft {
  const { window, request } = at;
  const minutes = request.longerMinutes ?? 60;
  const end = addMinutes(window.end, minutes);
  const document = withCells(at.document, 'windows', 'window', window.id, {
    end: cellOf(end, window.zone),
  });
  const next = sitePlan(document);
  const longer = next.plan.windows.find((item) => item.id === window.id)!;
  const { placements } = at.planned;
  const booked = bookingOf(at, window, minutes, 0);
  const crossed = next.plan.windows.filter(
    (item) => item.id !== window.id && item.start < end && item.end > window.end,
  );
  return {
    id: 'longer',
    kind: 'longer-window',
    name: `${durationText(minutes)} longer`,
    changes: [
      `${window.id} is booked to ${clockWords(end, window.zone)}; the work stays as planned.`,
    ],
    document,
    ...next,
    here: [{ ...next, window: longer, placements }],
    placements,
    unplaced: [],
    keyDates: [],
    lines: booked.lines,
    turn: {
      what: `The further ${durationText(minutes)}`,
      minor: booked.minor,
      each: { count: minutes / 60, word: 'an hour' },
    },
    notes: [
      ...(booked.lines.length > 0
        ? []
        : ['The price book has no price of booking: the longer window is priced at nothing.']),
      ...crossed.map((item) => `${item.id} begins before the longer window ends.`),
      'Trains due before the new end are taken as rebooked with it, and cost nothing here.',
    ],
  };
}

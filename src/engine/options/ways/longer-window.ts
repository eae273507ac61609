import { addMinutes } from '../../../calendar/index.js';
import { sitePlan } from '../../site/site-plan.js';
import type { Draft } from '../draft.js';
import { cellOf, withCells } from '../edits.js';
import { sayOption } from '../say-option.js';
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
    name: sayOption('longer-by', { minutes }),
    changes: [
      sayOption('booked-as-planned', {
        window: window.id,
        end: { at: end, zone: window.zone },
      }),
    ],
    document,
    ...next,
    here: [{ ...next, window: longer, placements }],
    placements,
    unplaced: [],
    keyDates: [],
    lines: booked.lines,
    turn: {
      what: sayOption('further-time', { minutes }),
      minor: booked.minor,
      each: { count: minutes / 60, by: 'hour' },
    },
    notes: [
      ...(booked.lines.length > 0 ? [] : [sayOption('no-price-for-longer')]),
      ...crossed.map((item) => sayOption('begins-before-longer-ends', { window: item.id })),
      sayOption('trains-rebooked'),
    ],
  };
}

import {
  addMinutes,
  daysLater,
  intersect,
  lengthMinutes,
  type DailyBand,
  type Instant,
  type Interval,
} from '../../../calendar/index.js';
import type { AccessWindow, IsolatedSection, Phrase, PlanDocument } from '../../../model/index.js';
import { isolationCell, movedTo } from '../../../tables/index.js';
import { sitePlan } from '../../site/site-plan.js';
import { reasonOf, refused, type Draft } from '../draft.js';
import { cellOf, withCells, withRow, withTrainsAgain } from '../edits.js';
import { unitsIn } from '../plans.js';
import { refit } from '../refit.js';
import { sayOption } from '../say-option.js';
import { activityOf, elsewhere, type Situation } from '../situation.js';
import type { RefusedOption } from '../types.js';
import { bookingOf } from './booking.js';
import { halves, type Halves } from './halves.js';
import { settle } from './settle.js';

/** The second half of the window's work in a like window some days later. */
export function splitWindow(at: Situation): Draft | RefusedOption {
  const { window, request } = at;
  const days = request.splitDaysLater ?? 7;
  const id = freeId(at, `${window.id} second`);
  const name = sayOption('over-two-windows');
  const no = (state: RefusedOption['state'], reason: Phrase): RefusedOption =>
    refused('split', 'split', name, state, reason);
  const start = daysLater(window.start, days, window.zone);
  const cut = halves(at);
  if (cut.later.size === 0) return no('nothing-to-vary', sayOption('one-piece-only'));
  const document = withSecondWindow(at, id, start, cut);
  const next = sitePlan(document);
  const second = next.plan.windows.find((item) => item.id === id);
  if (!second) return no('infeasible', sayOption('second-not-written'));
  const kept = [
    ...elsewhere(at),
    ...at.planned.placements.flatMap((placement) =>
      placement.window === window.id ? cut.first(placement) : [],
    ),
  ];
  const there = refit(next.plan, second, cut.later, kept, at.time);
  if (there.unplaced.length > 0) return no('infeasible', reasonOf(there.unplaced));
  const found = settle(at, next.plan, [...kept, ...there.placements]);
  if (found.unplaced.length > 0) return no('infeasible', reasonOf(found.unplaced));
  const { placements } = found;
  const booked = bookingOf(at, second, lengthMinutes(second), 1);
  return {
    id: 'split',
    kind: 'split',
    name,
    changes: [
      sayOption('like-window-booked', {
        window: window.id,
        moment: { at: start, zone: window.zone },
      }),
    ],
    document,
    ...next,
    here: [
      { ...next, window, placements },
      {
        ...next,
        window: second,
        placements,
        night: id,
        unitsBefore: unitsIn(window.id, placements),
      },
    ],
    ...found,
    lines: booked.lines,
    turn: { what: sayOption('second-window'), minor: booked.minor },
    notes: booked.lines.length > 0 ? [] : [sayOption('no-price-for-second')],
  };
}

/** The document with the window once more, the work that goes there free to, and its trains due there too. */
function withSecondWindow(at: Situation, id: string, start: Instant, cut: Halves): PlanDocument {
  const { window } = at;
  const opened = withRow(
    at.document,
    'windows',
    {
      window: id,
      title: `${window.title}, second half`.replace(/^, /, ''),
      start: cellOf(start, window.zone),
      end: cellOf(addMinutes(start, lengthMinutes(window)), window.zone),
      isolation: isolationCell(isolationLater(window, start), window.zone),
      status: 'requested',
    },
    { key: 'window', id: window.id },
  );
  // A choice of the first window by the planner goes along with the work; divided work cannot be bound to either.
  const bound = [...cut.later.keys()].filter((key) => activityOf(at, key).window === window.id);
  const bindings = bound.reduce(
    (made, text) =>
      withCells(made, 'work', 'activity', text, { window: cut.wholly(text) ? id : '' }),
    opened,
  );
  const shiftMs = start - window.start;
  return withTrainsAgain(bindings, at.trains, window, { id, shiftMs });
}

/** What is dead in the window, at the same times by the clock some days later, as far as the second window reaches. */
function isolationLater(window: AccessWindow, from: Instant): readonly IsolatedSection[] {
  const within = { start: from, end: from + (window.end - window.start) };
  return movedTo(window, from).isolation.map(({ section, during }) => ({
    section,
    ...(during && {
      during: during.flatMap((item): readonly (Interval | DailyBand)[] =>
        'fromMinute' in item ? [item] : intersect([item], [within]),
      ),
    }),
  }));
}

function freeId(at: Situation, wanted: string): string {
  const taken = new Set(at.plan.windows.map((window) => window.id));
  let id = wanted;
  for (let n = 2; taken.has(id); n += 1) id = `${wanted} ${n}`;
  return id;
}

import type { Instant } from '../../../calendar/index.js';
import { parseMoney } from '../../../price/index.js';
import { noPlaceIn, type Draft } from '../draft.js';
import { boundsOf, unitsLeft, type Phrase } from '../../../model/index.js';
import { unitsIn } from '../plans.js';
import { sayOption } from '../say-option.js';
import { activityOf, type Situation } from '../situation.js';
import type { RefusedOption } from '../types.js';

/** Repeated work of the window that could stop between units. */
export interface Repeated {
  readonly activity: string;
  readonly title: string;
  readonly units: number;
  /** What in the window must wait for all of it. */
  readonly waits: readonly string[];
  /** What it makes good in the window, so that none of it can be left to another. */
  readonly makesGood: readonly string[];
  /** When the last of it in the window is planned to end. */
  readonly last: Instant;
}

/** The repeated work planned in the window. */
export function repeatedIn(at: Situation): readonly Repeated[] {
  const here = unitsIn(at.window.id, at.planned.placements);
  const bounds = boundsOf(at.plan.activities);
  return [...here].flatMap(([id, units]) => {
    const activity = activityOf(at, id);
    if (activity.work.kind !== 'units') return [];
    const ownBound = bounds.find((bound) => bound.activity === id);
    const waits = [...here.keys()].filter(
      (other) =>
        ownBound?.members.includes(other) ||
        activityOf(at, other).after.some((link) => link.activity === id && link.from === 'finish'),
    );
    const makesGood = bounds.flatMap((bound) =>
      bound.members.includes(id) &&
      (here.has(bound.activity) || unitsLeft(activityOf(at, bound.activity).work) === 0)
        ? [bound.activity]
        : [],
    );
    const last = at.planned.placements
      .filter((placement) => placement.window === at.window.id && placement.activity === id)
      .reduce((latest, placement) => Math.max(latest, placement.to), 0);
    return [{ activity: id, title: activity.title, units, waits, makesGood, last }];
  });
}

/** Repeated work to stop between units of. */
export type Stoppable = Pick<Repeated, 'activity' | 'units'>;

type Chosen = Stoppable | { readonly state: RefusedOption['state']; readonly reason: Phrase };

/** The repeated work to stop between units of: the one wanted, otherwise the last that nothing there waits for. */
export function chooseRepeated(repeated: readonly Repeated[], wanted?: string): Chosen {
  if (repeated.length === 0)
    return {
      state: 'nothing-to-vary',
      reason: sayOption('no-units-to-stop-between'),
    };
  const able = repeated.filter(
    (item) => item.waits.length === 0 && item.makesGood.length === 0 && item.units > 1,
  );
  const named = repeated.find((item) => item.activity === wanted);
  const found = named ?? able.sort((a, b) => b.last - a.last)[0] ?? repeated[0]!;
  if (found.waits.length > 0)
    return {
      state: 'infeasible',
      reason: sayOption('waits-for-all-units', found),
    };
  if (found.makesGood.length > 0)
    return {
      state: 'infeasible',
      reason: sayOption('makes-good-here', { activity: found.activity, opened: found.makesGood }),
    };
  if (found.units < 2)
    return {
      state: 'nothing-to-vary',
      reason: sayOption('one-unit-only', { activity: found.activity }),
    };
  return found;
}

/** What stopping one unit short comes to, from the draft that leaves one unit over. */
export function oneLess(at: Situation, activity: string, draft: Draft): Draft | RefusedOption {
  const name = sayOption('one-unit-less');
  const named = { id: 'less', kind: 'one-unit-less', name } as const;
  if (draft.unplaced.length > 0)
    return { ...named, state: 'infeasible', reason: noPlaceIn(draft, activity) };
  const again = draft.lines[0];
  return {
    ...draft,
    ...named,
    changes: [
      sayOption('unit-less-in', { activity, window: at.window.id }),
      ...(draft.document === at.document
        ? []
        : [sayOption('fixed-no-more', { activity, window: at.window.id })]),
    ],
    turn: {
      what: sayOption('unit-booked-again'),
      minor: again ? parseMoney(again.amount, at.prices) : 0,
    },
  };
}

import { replan } from '../engine/search.js';
import { dayFromText, isoText, startOfDay, type Instant } from '../calendar/index.js';
import type { Replan } from '../engine/types.js';
import type { Plan } from '../model/index.js';
import { frozenIn, type Frozen } from '../planner/given/frozen.js';
import { givenPlan } from '../planner/given/given-plan.js';
import { windowMoves, type WindowMove } from '../planner/given/moves.js';
import type { Broken } from '../planner/given/types.js';
import type { Allocation } from '../planner/search/types.js';
import type { MendedPart } from './answers/allocate.js';
import type { Arguments } from './arguments.js';
import { clockWords } from '../calendar/clock-words.js';
import { namedAs, planWords, type PlanNamed } from './plan-of-work.js';
import { readMoment } from './read/read-moment.js';
import type { GivenFile } from './read/read-plan.js';

/** A plan of work repaired to fit the given files. */
export interface MendedPlan {
  readonly allocation: Allocation;
  /** The plan that was repaired. */
  readonly from: PlanNamed;
  /** The pieces of that plan that no longer hold. */
  readonly broken: readonly Broken[];
  readonly moved: readonly (WindowMove & { readonly reason: string })[];
  /** How many pieces change window, and how many must. */
  readonly fewest: Replan['fewest'];
  /** What moving more pieces would gain; null when nothing was found. */
  readonly more: Replan['more'];
  /** What was frozen; absent when nothing was. */
  readonly frozen?: FrozenUntil;
}

export type FrozenUntil = Frozen & { readonly until: Instant };

/** Repairs an earlier plan with as few changes as the files allow. */
export function mendedPlan(
  plan: Plan,
  asked: Pick<Arguments, 'first' | 'seconds' | 'seed' | 'frozen-until'>,
  from: GivenFile,
): MendedPlan {
  const given = givenPlan(plan, from.placements, { first: asked.first });
  const frozen = frozenOf(plan, asked, from);
  const { allocation, moved, fewest, more } = replan(
    plan,
    { ...given.allocation, placements: from.placements },
    {
      first: asked.first,
      ...(asked.seconds !== undefined && { seconds: asked.seconds }),
      seed: asked.seed,
      clock: () => performance.now(),
      ...(frozen && { keep: frozen.kept }),
    },
  );
  const why = new Map(moved.map((move) => [move.activity, move.why]));
  return {
    allocation,
    from: namedAs(from, plan.zone),
    broken: given.broken,
    fewest,
    more,
    ...(frozen && { frozen }),
    moved: windowMoves(from.placements, allocation.placements).map((move) => ({
      ...move,
      reason: why.get(move.activity) ?? 'it is no longer in the plan',
    })),
  };
}

/** What is frozen in a plan; undefined when nothing is. */
export function frozenOf(
  plan: Plan,
  asked: Pick<Arguments, 'frozen-until'>,
  from: GivenFile,
): FrozenUntil | undefined {
  const until = frozenBy(plan, asked, from);
  return until === undefined ? undefined : { ...frozenIn(plan, from.placements, until), until };
}

/** Until when the plan is frozen: by the option, otherwise by its file. */
function frozenBy(
  plan: Plan,
  { 'frozen-until': asked }: Pick<Arguments, 'frozen-until'>,
  { frozenUntil }: GivenFile,
): Instant | undefined {
  if (asked !== undefined) return readMoment(asked, 'frozen-until', plan.zone);
  const day = dayFromText(frozenUntil ?? '');
  return day === undefined ? undefined : startOfDay(day, plan.zone);
}

/** The part of the JSON about the repair. */
export function mendedJson(
  { from, broken, moved, fewest, more, frozen }: MendedPlan,
  plan: Plan,
): MendedPart {
  const { given: _, ...named } = from;
  return {
    from: named,
    broken,
    moved,
    fewest,
    more,
    ...(frozen && frozenJson(frozen, plan)),
  };
}

export function frozenJson(frozen: FrozenUntil, plan: Plan): Pick<MendedPart, 'frozen'> {
  return {
    frozen: {
      until: isoText(frozen.until, plan.zone),
      pieces: frozen.kept.length,
      lost: frozen.lost.map(({ placement, text }) => ({ activity: placement.activity, text })),
    },
  };
}

export function mendedLines(
  { from, broken, moved, fewest, more, frozen }: MendedPlan,
  plan: Plan,
): string[] {
  const place = (window: string | null): string => window ?? 'no place';
  return [
    `Mended from plan ${planWords(from)}${moved.length === 0 ? ': nothing leaves its window' : ''}.`,
    ...(moved.length === 0 ? [] : [fewestWords(fewest)]),
    ...(frozen ? frozenWords(frozen, plan) : []),
    ...(broken.length > 0
      ? ['What no longer held:', ...broken.map((item) => `  ${item.text}`)]
      : []),
    ...moved.map(
      (item) =>
        `  ${item.activity}${item.units === undefined ? '' : `, ${item.units} units`}: ${place(item.from)} to ${place(item.to)}: ${item.reason}.`,
    ),
    ...(more ? [`Moving more would gain: ${moreWords(more)}.`] : []),
  ];
}

const pieces = (count: number): string => `${count} ${count === 1 ? 'piece' : 'pieces'}`;

/** How many pieces move, and how many must; for repeated work, a piece is one visit. */
function fewestWords({ moved, atLeast, proven }: Replan['fewest']): string {
  const leave = moved === 1 ? '1 piece leaves its window' : `${moved} pieces leave their windows`;
  return proven
    ? `${leave}: no plan that places as much and keeps as many key dates moves fewer.`
    : `${leave}, the fewest found; to place as much and keep as many key dates at least ${atLeast} must.`;
}

export function frozenWords({ kept, lost, until }: FrozenUntil, plan: Plan): string[] {
  return [
    `Frozen: ${pieces(kept.length)} that ${kept.length === 1 ? 'begins' : 'begin'} before ${clockWords(until, plan.zone)} ${kept.length === 1 ? 'keeps its place' : 'keep their places'}.`,
    ...lost.map((item) => `  could not be kept: ${item.text}`),
  ];
}

/** `2 more key dates met, if 6 pieces move`. */
function moreWords({ keyDatesMet, placed, moved }: NonNullable<Replan['more']>): string {
  const gains = [
    ...(placed > 0 ? [`${pieces(placed)} more placed`] : []),
    ...(keyDatesMet > 0
      ? [`${keyDatesMet} more key ${keyDatesMet === 1 ? 'date' : 'dates'} met`]
      : []),
  ];
  return `${gains.join(' and ') || 'key dates missed by less'}, if ${pieces(moved)} ${moved === 1 ? 'moves' : 'move'}`;
}

import { lengthMinutes, MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Assignment, LimitSet } from '../../model/index.js';
import { missingCompetences } from './competence.js';
import { rosterChecker, type Breach, type Finding, type RosterChecker } from './check-roster.js';

/** A change to a roster. Minutes are whole and above 0. */
export type RosterChange =
  | {
      readonly change: 'finish earlier' | 'start later' | 'move earlier' | 'move later';
      readonly turn: string;
      readonly minutes: number;
    }
  | {
      readonly change: 'give to';
      readonly turn: string;
      readonly crew: string;
      /** Competences that the turn needs and the crew holds. Absent: the roster names none for the turn, so none were checked. */
      readonly competence?: readonly string[] | undefined;
    }
  | { readonly change: 'drop'; readonly turn: string };

/** A change that ends a breach, tried on the roster and checked against every limit for every crew it affects. */
export type Mend = RosterChange & {
  /** Minutes of duty removed, moved or given to others. */
  readonly changedMinutes: number;
  /** Minutes of duty that nobody works any more. */
  readonly lostMinutes: number;
};

export interface MendContext {
  readonly set: LimitSet;
  readonly zone: string;
  /** A turn inside one of these is never moved out of it. */
  readonly windows: readonly AccessWindow[];
}

const DAYS_AROUND = 16;
const LONGEST_MOVE = 12 * 60;
const order: readonly RosterChange['change'][] = [
  'move later',
  'move earlier',
  'finish earlier',
  'start later',
  'give to',
  'drop',
];

/** Changes that reduce the work done. */
const loses: ReadonlySet<RosterChange['change']> = new Set([
  'start later',
  'finish earlier',
  'drop',
]);

/** The roster with a change made. */
export function changed(turns: readonly Assignment[], change: RosterChange): Assignment[] {
  return turns.flatMap((turn): Assignment[] => {
    if (turn.id !== change.turn) return [turn];
    switch (change.change) {
      case 'drop':
        return [];
      case 'give to':
        return [{ ...turn, crew: change.crew }];
      case 'finish earlier':
        return [{ ...turn, end: turn.end - change.minutes * MINUTE }];
      case 'start later':
        return [{ ...turn, start: turn.start + change.minutes * MINUTE }];
      case 'move earlier':
      case 'move later': {
        const by = (change.change === 'move later' ? 1 : -1) * change.minutes * MINUTE;
        return [{ ...turn, start: turn.start + by, end: turn.end + by }];
      }
    }
  });
}

type Found = Omit<Breach, 'cure'>;

const keyOf = (breach: Found): string =>
  JSON.stringify([breach.assignment, breach.limit, breach.name]);

/**
 * Changes that end a breach and cause no other, smallest first. They move, shorten, drop or give away the turn of the
 * breach, or an earlier turn that counts towards it. No crew is given a turn that needs a competence it is not known to
 * hold.
 *
 * Each was applied to the roster, which was then checked again. Changes of several turns at once are not tried, so an
 * empty answer does not prove that there is no cure.
 */
export function mendsOf(
  breach: Found,
  turns: readonly Assignment[],
  context: MendContext,
  check = rosterChecker(context.set, context.zone),
): readonly Mend[] {
  const own = turns.filter((turn) => turn.crew === breach.crew);
  const at = own.find((assignment) => assignment.id === breach.assignment);
  if (!at) return [];
  const averaged = breach.unit === 'minutes a day' || breach.unit === 'minutes a week';
  // Only averages look back further than this, so other limits are tried on nearby turns only.
  const near = averaged
    ? own
    : own.filter(
        (assignment) => Math.abs(assignment.start - at.start) <= DAYS_AROUND * 1440 * MINUTE,
      );
  const key = keyOf(breach);
  const before = excessesIn(check(near).findings);
  const broken = context.set.limits.filter(
    ({ limit, name }) => limit === breach.limit && name === breach.name,
  );
  const endsBreach = (change: RosterChange): boolean =>
    !check(changed(near, change), broken).findings.some((item) => keyOf(item) === key);
  const breaksNothing = (change: RosterChange): boolean =>
    check(changed(near, change)).findings.every(
      (item) => item.excess <= (before.get(keyOf(item)) ?? 0) && keyOf(item) !== key,
    );

  const counted = own.filter(
    (assignment) => assignment.end > breach.over.start && assignment.start < breach.over.end,
  );
  const previous = own
    .filter((assignment) => assignment.end <= at.start)
    .sort((a, b) => b.end - a.end)[0];
  const mends: RosterChange[] = [];
  for (const turn of new Set([at, ...(previous ? [previous] : [])]))
    for (const change of ['move later', 'move earlier', 'start later', 'finish earlier'] as const) {
      const most = change.startsWith('move') ? LONGEST_MOVE : lengthMinutes(turn) - 1;
      const minutes = averaged
        ? undefined
        : fewestMinutes(most, (n) => endsBreach({ change, turn: turn.id, minutes: n }));
      if (minutes !== undefined) mends.push({ change, turn: turn.id, minutes });
    }
  const droppable = [...new Set([at, ...counted])].sort(
    (a, b) => lengthMinutes(a) - lengthMinutes(b),
  );
  const dropped = droppable.find((turn) => breaksNothing({ change: 'drop', turn: turn.id }));
  if (dropped) mends.push({ change: 'drop', turn: dropped.id });
  const kept = mends.filter((mend) => staysInWindow(mend, turns, context) && breaksNothing(mend));

  const others = [...new Set(turns.map((turn) => turn.crew))].filter(
    (text) => text !== breach.crew,
  );
  for (const turn of dropped ? new Set([at, dropped]) : [at]) {
    if (!breaksNothing({ change: 'drop', turn: turn.id })) continue;
    const crew = others.find(
      (other) =>
        missingCompetences(other, turn, turns).length === 0 && canTake(other, turn, turns, check),
    );
    const { competence } = turn;
    if (crew !== undefined)
      kept.push({ change: 'give to', turn: turn.id, crew, ...(competence && { competence }) });
  }
  const lengths = new Map(turns.map((turn) => [turn.id, lengthMinutes(turn)]));
  return kept
    .map((change): Mend => {
      const whole = lengths.get(change.turn)!;
      const changedMinutes = 'minutes' in change ? change.minutes : whole;
      return {
        ...change,
        changedMinutes,
        lostMinutes: loses.has(change.change) ? changedMinutes : 0,
      };
    })
    .sort(
      (a, b) =>
        a.changedMinutes - b.changedMinutes || order.indexOf(a.change) - order.indexOf(b.change),
    );
}

/** Applies changes one after another until no breach is left, or none can be ended; `left` is checked at the end. */
export function mendAll(
  turns: readonly Assignment[],
  context: MendContext,
  most = 60,
): { readonly changes: readonly Mend[]; readonly left: readonly Finding[] } {
  const check = rosterChecker(context.set, context.zone);
  let now = [...turns];
  const changes: Mend[] = [];
  const unresolved = new Set<string>();
  for (;;) {
    const { findings } = check(now);
    const next = findings.find((breach) => !unresolved.has(keyOf(breach)));
    if (!next || changes.length >= most) return { changes, left: findings };
    const mend = mendsOf(next, now, context, check)[0];
    if (!mend) unresolved.add(keyOf(next));
    else {
      changes.push(mend);
      now = changed(now, mend);
    }
  }
}

const excessesIn = (findings: readonly Finding[]): Map<string, number> =>
  new Map(findings.map((finding) => [keyOf(finding), finding.excess]));

/** Whether a crew can take a turn without a new or worse breach. */
function canTake(
  crew: string,
  turn: Assignment,
  turns: readonly Assignment[],
  check: RosterChecker,
): boolean {
  const theirs = turns.filter((assignment) => assignment.crew === crew);
  const before = excessesIn(check(theirs).findings);
  return check([...theirs, { ...turn, crew }]).findings.every(
    (breach) => breach.excess <= (before.get(keyOf(breach)) ?? 0),
  );
}

function staysInWindow(
  change: RosterChange,
  turns: readonly Assignment[],
  { windows }: MendContext,
): boolean {
  if (!change.change.startsWith('move')) return true;
  const turn = turns.find((assignment) => assignment.id === change.turn)!;
  const window = windows.find((item) => item.id === turn.window);
  if (!window || turn.start < window.start || turn.end > window.end) return true;
  const [moved] = changed([turn], change);
  return moved!.start >= window.start && moved!.end <= window.end;
}

/** Binary search for the fewest minutes that suffice; `undefined` when even `most` does not. */
function fewestMinutes(most: number, suffices: (minutes: number) => boolean): number | undefined {
  if (most < 1 || !suffices(most)) return undefined;
  let bad = 0;
  let good = most;
  while (good - bad > 1) {
    const middle = Math.floor((bad + good) / 2);
    if (suffices(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

import { uncovered, curfewStretches } from './bands.js';
import { deadIn } from './dead.js';
import { clockOf } from './clock.js';
import { reachOf } from './steps.js';
import {
  MINUTE,
  type AccessWindow,
  type Activity,
  type Instant,
  type Phrase,
  type Plan,
  type Step,
  type Stretch,
} from './plan-types.js';
import { say } from './say.js';

/** Time of a window that work may not use, and why. */
export interface Barred extends Stretch {
  readonly code: 'lead-in' | 'curfew' | 'closed' | 'shift-break' | 'lead-out' | 'margin';
  readonly why: Phrase;
}

/** The fields of an activity that decide which time it can use. */
export type Needs = Pick<Activity, 'isolation' | 'loud' | 'heeds'>;

export interface WindowTime {
  /** In order; a piece of work must lie wholly within one of them. */
  readonly usable: readonly Stretch[];
  readonly barred: readonly Barred[];
}

/** The check's own ledgers, cached by window and needs. */
export class Ledgers {
  readonly #plan: Plan;
  readonly #known = new Map<string, WindowTime>();

  constructor(plan: Plan) {
    this.#plan = plan;
  }

  of(window: AccessWindow, work: Needs): WindowTime {
    const key = JSON.stringify([
      window.id,
      work.isolation.toSorted(),
      work.loud,
      (work.heeds ?? []).toSorted(),
    ]);
    let time = this.#known.get(key);
    if (!time) this.#known.set(key, (time = this.#timeOf(window, work)));
    return time;
  }

  #timeOf(window: AccessWindow, work: Needs): WindowTime {
    const { leadIn, leadOut, margin } = this.#plan.rules;
    const isolates = work.isolation.length > 0;
    const needs = { isolates, loud: work.loud };
    const dead = deadIn(window, work.isolation);
    const marginFrom = window.end - margin.minutes * MINUTE;
    // Laid out from 0, then moved back: all steps end before the margin, and isolating steps before the sections go
    // live.
    const after = reachOf(leadOut, needs, 0);
    const readyIn = ({ start }: Stretch): Instant =>
      Math.max(reachOf(leadIn, needs, window.start, start).end, start);
    const clearIn = ({ end }: Stretch): Instant =>
      Math.min(marginFrom - after.end, end - (after.isolatedBy ?? 0));
    // Minutes to isolate or give up within a possession. The other steps are not repeated, so they take no time, and
    // steps alongside them start where they would.
    const alone = (steps: readonly Step[]): number =>
      reachOf(
        steps.map((step) => (step.when === 'isolation' ? step : { ...step, minutes: 0 })),
        { isolates: true, loud: work.loud },
        0,
      ).isolatedBy ?? 0;
    const [again, giveUp] = [alone(leadIn), alone(leadOut)];
    const can =
      dead.length < 2
        ? dead
        : dead.filter((stretch) => stretch.end - stretch.start > again + giveUp);
    const first = can.find((stretch) => dead.length < 2 || readyIn(stretch) + giveUp < stretch.end);
    const last = can.findLast(
      (stretch) => dead.length < 2 || clearIn(stretch) - again > stretch.start,
    );
    const ready = first ? readyIn(first) : window.end;
    const clearBy = last ? clearIn(last) : window.start;
    const live = can
      .slice(1)
      .map((next, k) => ({ start: can[k]!.end - giveUp, end: next.start + again }));
    const barred: Barred[] = [
      { start: window.start, end: ready, code: 'lead-in', why: say('the-lead-in') },
      ...live.map((item) => ({
        ...item,
        code: 'lead-in' as const,
        why: say('time-not-isolated'),
      })),
      { start: clearBy, end: marginFrom, code: 'lead-out', why: say('the-lead-out') },
      { start: marginFrom, end: window.end, code: 'margin', why: say('the-required-margin') },
      ...stopsOf(this.#plan, work, window, window.zone),
      ...this.#shiftBreaks(window),
    ];
    return { usable: uncovered(window, barred), barred };
  }

  /** The last minutes of every full shift, in elapsed time from the start of the window. */
  #shiftBreaks(window: AccessWindow): Barred[] {
    const { shifts } = this.#plan.rules;
    const breaks: Barred[] = [];
    if (!shifts || shifts.changeoverMinutes === 0) return breaks;
    for (let shift = 1; ; shift += 1) {
      const end = window.start + shift * shifts.longestMinutes * MINUTE;
      if (end >= window.end) return breaks;
      const start = end - shifts.changeoverMinutes * MINUTE;
      breaks.push({ start, end, code: 'shift-break', why: say('a-shift-changeover') });
    }
  }
}

/** Curfews that bar the work and closed time that it obeys, in the local time of a zone. */
export function stopsOf(plan: Plan, work: Needs, within: Stretch, zone: string): Barred[] {
  const clock = clockOf(zone);
  const { curfews, closed = [] } = plan.rules;
  const stops: Barred[] = [];
  for (const curfew of curfews)
    if (curfew.bars === 'all' || work.loud)
      for (const stretch of curfewStretches(curfew, within, clock))
        stops.push({ ...stretch, code: 'curfew', why: say('the-curfew', { name: curfew.name }) });
  for (const { name, rule, stretches, daily } of closed) {
    if (!work.heeds?.includes(name)) continue;
    const why = say('closed-time', { rule });
    for (const { start, end } of stretches) stops.push({ start, end, code: 'closed', why });
    for (const band of daily)
      for (const stretch of curfewStretches(band, within, clock))
        stops.push({ ...stretch, code: 'closed', why });
  }
  return stops;
}

import { clearOf, curfewStretches } from './bands.js';
import { clockOf } from './clock.js';
import { reachOf } from './steps.js';
import { MINUTE, type AccessWindow, type Activity, type Plan, type Stretch } from './words.js';

/** Time of a window that work may not use, and why. */
export interface Barred extends Stretch {
  readonly code: 'lead-in' | 'curfew' | 'closed' | 'shift-break' | 'lead-out' | 'margin';
  readonly why: string;
}

export interface WindowTime {
  /** In order; work lies in one of them from its first minute to its last. */
  readonly usable: readonly Stretch[];
  readonly barred: readonly Barred[];
}

/** The check's own ledgers, one a window and kind of work, each worked out once. */
export class Ledgers {
  readonly #plan: Plan;
  readonly #known = new Map<string, WindowTime>();

  constructor(plan: Plan) {
    this.#plan = plan;
  }

  of(window: AccessWindow, work: Activity): WindowTime {
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

  #timeOf(window: AccessWindow, work: Activity): WindowTime {
    const { leadIn, leadOut, margin } = this.#plan.rules;
    const isolates = work.isolation.length > 0;
    const needs = { isolates, loud: work.loud };
    let dead: Stretch = window;
    for (const { section, during } of window.isolation)
      if (during && work.isolation.includes(section))
        dead = {
          start: Math.max(dead.start, during.start),
          end: Math.min(dead.end, during.end),
        };
    const before = reachOf(leadIn, needs, window.start, dead.start);
    const ready = Math.max(before.end, dead.start);
    const marginFrom = window.end - margin.minutes * MINUTE;
    // Counted from 0, then moved back: all of it before the margin, and what isolates before the sections go live.
    const after = reachOf(leadOut, needs, 0);
    const clearBy = Math.min(marginFrom - after.end, dead.end - (after.isolatedBy ?? 0));
    const barred: Barred[] = [
      { start: window.start, end: ready, code: 'lead-in', why: 'the lead-in' },
      { start: clearBy, end: marginFrom, code: 'lead-out', why: 'the lead-out' },
      { start: marginFrom, end: window.end, code: 'margin', why: 'the required margin' },
      ...stopsOf(this.#plan, work, window, window.zone),
      ...this.#shiftBreaks(window),
    ];
    return { usable: clearOf(window, barred), barred };
  }

  /** The last minutes of every full shift, counted from the start of the window in real time. */
  #shiftBreaks(window: AccessWindow): Barred[] {
    const { shifts } = this.#plan.rules;
    const breaks: Barred[] = [];
    if (!shifts || shifts.changeoverMinutes === 0) return breaks;
    for (let shift = 1; ; shift += 1) {
      const end = window.start + shift * shifts.longestMinutes * MINUTE;
      if (end >= window.end) return breaks;
      const start = end - shifts.changeoverMinutes * MINUTE;
      breaks.push({ start, end, code: 'shift-break', why: 'a shift changeover' });
    }
  }
}

/** Curfews that bar the work, and closed time that it heeds, by the clocks of a zone. */
export function stopsOf(plan: Plan, work: Activity, within: Stretch, zone: string): Barred[] {
  const clock = clockOf(zone);
  const { curfews, closed = [] } = plan.rules;
  const stops: Barred[] = [];
  for (const curfew of curfews)
    if (curfew.bars === 'all' || work.loud)
      for (const stretch of curfewStretches(curfew, within, clock))
        stops.push({ ...stretch, code: 'curfew', why: `the curfew "${curfew.name}"` });
  for (const { name, rule, stretches, daily } of closed) {
    if (!work.heeds?.includes(name)) continue;
    const why = `closed time: ${rule}`;
    for (const { start, end } of stretches) stops.push({ start, end, code: 'closed', why });
    for (const band of daily)
      for (const stretch of curfewStretches(band, within, clock))
        stops.push({ ...stretch, code: 'closed', why });
  }
  return stops;
}

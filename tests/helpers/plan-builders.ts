import { MINUTE } from '../../src/calendar/index.js';
import {
  noRules,
  type AccessWindow,
  type Activity,
  type Availability,
  type Curfew,
  type Plan,
  type Resource,
  type RuleSet,
  type WindowStatus,
} from '../../src/model/index.js';

// Times are minutes after 1970-01-01T00:00Z, in a zone that is UTC all year, so that tests read as sums.
const zone = 'Etc/UTC';

export function plan(parts: Partial<Plan> = {}): Plan {
  return { zone, windows: [], activities: [], resources: [], rules: noRules, ...parts };
}

/** A window that starts at a minute and lasts so many. */
export function window(
  id: string,
  start: number,
  minutes: number,
  more: {
    lines?: readonly string[];
    isolation?: readonly string[];
    status?: WindowStatus;
    extent?: readonly [number, number];
    zone?: string;
  } = {},
): AccessWindow {
  return {
    id,
    title: '',
    start: start * MINUTE,
    end: (start + minutes) * MINUTE,
    zone: more.zone ?? zone,
    lines: more.lines ?? [],
    ...(more.extent ? { extent: { from: more.extent[0], to: more.extent[1] } } : {}),
    isolation: (more.isolation ?? []).map((section) => ({ section })),
    status: more.status ?? 'confirmed',
    trainsAfter: '',
  };
}

/** `after`: `A1`, `A1 + 30` or `start of A1 + 30`. `units`: left, minutes each, set up, make safe. */
export function activity(
  id: string,
  minutes: number,
  more: {
    package?: string;
    after?: readonly string[];
    units?: readonly [number, number, number, number];
    done?: number;
    lines?: readonly string[];
    extent?: readonly [number, number];
    isolation?: readonly string[];
    resources?: Readonly<Record<string, number>>;
    loud?: boolean;
    place?: Activity['place'];
    notBefore?: number;
    keyDate?: number;
    window?: string;
    madeGoodBy?: readonly string[] | 'none';
    occupies?: Activity['occupies'];
  } = {},
): Activity {
  return {
    id,
    package: more.package ?? 'W1',
    title: '',
    after: (more.after ?? []).map((text) => {
      const [, start, name, gap] = /^(start of )?(\S+)(?: \+ (\d+))?$/.exec(text)!;
      return { activity: name!, from: start ? 'start' : 'finish', gapMinutes: Number(gap ?? 0) };
    }),
    work: more.units
      ? {
          kind: 'units',
          units: more.units[0] + (more.done ?? 0),
          done: more.done ?? 0,
          minutesPerUnit: more.units[1],
          setUpMinutes: more.units[2],
          makeSafeMinutes: more.units[3],
        }
      : { kind: 'whole', minutes },
    lines: more.lines ?? [],
    ...(more.extent ? { extent: { from: more.extent[0], to: more.extent[1] } } : {}),
    isolation: more.isolation ?? [],
    resources: Object.entries(more.resources ?? {}).map(([name, amount]) => ({
      resource: name,
      amount,
    })),
    loud: more.loud ?? false,
    place: more.place ?? 'inside',
    ...(more.notBefore === undefined ? {} : { notBefore: more.notBefore * MINUTE }),
    ...(more.keyDate === undefined ? {} : { keyDate: more.keyDate * MINUTE }),
    ...(more.window === undefined ? {} : { window: more.window }),
    ...(more.madeGoodBy === undefined ? {} : { madeGoodBy: more.madeGoodBy }),
    ...(more.occupies === undefined ? {} : { occupies: more.occupies }),
  };
}

/** A resource whose rows give `from` and `to` in minutes. */
export function resource(id: string, rows: readonly Availability[]): Resource {
  return {
    id,
    availability: rows.map((row) => ({
      ...row,
      ...(row.from === undefined ? {} : { from: row.from * MINUTE }),
      ...(row.to === undefined ? {} : { to: row.to * MINUTE }),
    })),
  };
}

export function rules(
  parts: { leadIn?: number; leadOut?: number; margin?: number; curfews?: readonly Curfew[] } = {},
): RuleSet {
  return {
    ...noRules,
    leadIn: parts.leadIn
      ? [{ step: 'Take possession', minutes: parts.leadIn, when: 'always' }]
      : [],
    leadOut: parts.leadOut ? [{ step: 'Give back', minutes: parts.leadOut, when: 'always' }] : [],
    margin: { minutes: parts.margin ?? 0 },
    curfews: [...(parts.curfews ?? [])],
  };
}

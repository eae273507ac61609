import {
  contains,
  dailyBands,
  durationText,
  isoText,
  lengthMinutes,
  MINUTE,
  subtract,
  totalMinutes,
  unionOf,
  type Instant,
  type Interval,
  type IntervalSet,
} from '../calendar/index.js';
import {
  weekdays,
  type AccessWindow,
  type Curfew,
  type Needs,
  type RuleSet,
} from '../model/index.js';
import { layOut, type PlacedStep } from './steps.js';
import type { Ledger, LedgerKind, LedgerRow } from './types.js';

const clockOf = (at: Instant, zone: string): string => isoText(at, zone).slice(11, 16);

/** A row before it is cut to what no other row has taken. */
interface Claim extends Interval {
  readonly rule: string;
  readonly kind: LedgerKind;
  readonly why: string;
}

/** The stretch in which all needed sections may be isolated; the whole window where none has times of its own. */
function isolationTimes(window: AccessWindow, needs: Needs): Interval {
  const times = window.isolation
    .filter((one) => needs.isolation.includes(one.section))
    .flatMap((one) => (one.during ? [one.during] : []));
  return {
    start: Math.max(window.start, ...times.map((one) => one.start)),
    end: Math.min(window.end, ...times.map((one) => one.end)),
  };
}

function whyOf({ step }: PlacedStep, what: string): string {
  const condition = {
    always: 'Every window',
    isolation: 'The work needs an isolation',
    loud: 'The work is loud',
  }[step.when];
  const beside = step.alongside === undefined ? '' : `, alongside "${step.alongside}"`;
  const source = step.source === undefined ? '' : ` Source: ${step.source}.`;
  return `${condition}: ${durationText(step.minutes)} ${what}${beside}.${source}`;
}

function leadIn(
  window: AccessWindow,
  needs: Needs,
  rules: RuleSet,
  isolated: Interval,
): readonly Claim[] {
  const placed = layOut(rules.leadIn, needs, window.start, (step) =>
    step.when === 'isolation' ? isolated.start : window.start,
  );
  const claims: Claim[] = placed.map((one) => ({
    start: one.start,
    end: one.end,
    rule: one.step.step,
    kind: 'lead-in',
    why: whyOf(one, 'from the start of the window'),
  }));
  // Work that needs the isolation cannot begin before the sections may be made dead, steps or no steps.
  const end = Math.max(
    window.start,
    needs.isolation.length > 0 ? isolated.start : window.start,
    ...placed.map((one) => one.end),
  );
  const sections = needs.isolation.join(', ');
  return [
    ...claims,
    ...subtract([{ start: window.start, end }], unionOf(claims)).map((gap) => ({
      ...gap,
      rule: `Wait for the isolation of ${sections}`,
      kind: 'lead-in' as const,
      why: `${sections} may be isolated from ${clockOf(isolated.start, window.zone)} only.`,
    })),
  ];
}

function leadOut(
  window: AccessWindow,
  needs: Needs,
  rules: RuleSet,
  isolated: Interval,
): readonly Claim[] {
  const handback = window.end - rules.margin.minutes * MINUTE;
  const placed = layOut(rules.leadOut, needs, 0);
  const length = Math.max(0, ...placed.map((one) => one.end));
  const start = handback - length;
  const isolationEnds = placed
    .filter((one) => one.step.when === 'isolation')
    .map((one) => start + one.end);
  // The isolation steps, or the work itself where there are none, must be over when the isolation ends.
  const latest = isolationEnds.length > 0 ? Math.max(...isolationEnds) : start;
  const earlier = needs.isolation.length > 0 ? Math.max(0, latest - isolated.end) : 0;
  const claims: Claim[] = placed.map((one) => ({
    start: start - earlier + one.start,
    end: start - earlier + one.end,
    rule: one.step.step,
    kind: 'lead-out',
    why: whyOf(one, 'counted back from the required margin'),
  }));
  if (earlier === 0) return claims;
  return [
    ...claims,
    {
      start: handback - earlier,
      end: handback,
      rule: `Isolation of ${needs.isolation.join(', ')} given up`,
      kind: 'lead-out',
      why: `The isolation ends at ${clockOf(isolated.end, window.zone)}, before the window does.`,
    },
  ];
}

const minuteOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

function curfews(window: AccessWindow, needs: Needs, list: readonly Curfew[]): readonly Claim[] {
  return list
    .filter((one) => one.bars === 'all' || needs.loud)
    .flatMap((one) => {
      const band = {
        fromMinute: minuteOf(one.from),
        toMinute: minuteOf(one.to),
        ...(one.days ? { days: one.days.map((day) => weekdays.indexOf(day) + 1) } : {}),
      };
      const source = one.source === undefined ? '' : ` Source: ${one.source}.`;
      const why = `${one.bars === 'all' ? 'All work' : 'Loud work'} stops from ${one.from} to ${one.to}.${source}`;
      return dailyBands(band, window, window.zone).map((stretch) => ({
        ...stretch,
        rule: one.name,
        kind: 'curfew' as const,
        why,
      }));
    });
}

function shiftBreaks(window: AccessWindow, rules: RuleSet): readonly Claim[] {
  const { shifts } = rules;
  if (!shifts || shifts.changeoverMinutes === 0) return [];
  const breaks: Claim[] = [];
  for (
    let end = window.start + shifts.longestMinutes * MINUTE;
    end < window.end;
    end += shifts.longestMinutes * MINUTE
  ) {
    breaks.push({
      start: end - shifts.changeoverMinutes * MINUTE,
      end,
      rule: 'Shift changeover',
      kind: 'shift-break',
      why: `A shift lasts ${durationText(shifts.longestMinutes)} at the longest; handing over takes its last ${durationText(shifts.changeoverMinutes)}.`,
    });
  }
  return breaks;
}

/** Cuts each claim to the time inside `within` that no earlier claim has; a claim left with nothing keeps a row of 0 minutes. */
function partition(claims: readonly Claim[], within: Interval): LedgerRow[] {
  let taken: IntervalSet = [];
  return claims.flatMap((claim) => {
    const inside = {
      start: Math.min(Math.max(claim.start, within.start), within.end),
      end: Math.max(Math.min(claim.end, within.end), within.start),
    };
    const pieces = inside.end > inside.start ? subtract([inside], taken) : [];
    taken = unionOf([...taken, ...pieces]);
    const needed = lengthMinutes(claim);
    const got = totalMinutes(pieces);
    const cut =
      !contains(within, claim) && got < needed
        ? ` Needs ${durationText(needed)}, has ${durationText(got)}: the window is too short.`
        : '';
    if (pieces.length === 0) {
      const why = `${claim.why}${cut || ' All of it runs beside other steps: nothing more is deducted.'}`;
      return claim.kind === 'curfew' || claim.kind === 'shift-break'
        ? []
        : [{ ...claim, start: inside.start, end: inside.start, minutes: 0, why }];
    }
    return pieces.map((piece) => ({
      ...claim,
      ...piece,
      minutes: lengthMinutes(piece),
      why: `${claim.why}${cut}`,
    }));
  });
}

function barredOf(window: AccessWindow, needs: Needs): Ledger['barred'] {
  const booked = new Set(window.isolation.map((one) => one.section));
  return [
    ...(window.status === 'withdrawn'
      ? [{ code: 'withdrawn', text: 'The window is withdrawn.' }]
      : []),
    ...needs.isolation
      .filter((section) => !booked.has(section))
      .map((section) => ({
        code: 'isolation-not-booked',
        text: `The window does not isolate ${section}.`,
      })),
  ];
}

/**
 * Partitions a window's minutes for work with the given needs.
 *
 * Lead-in runs forward from the start, lead-out back from the required margin, which is the last row. Curfews and shift
 * changeovers are cut out of what is between. Rows are half-open, in time order, and sum to the gross to the minute;
 * where a window is too short for its own deductions they are cut, lead-in first, and `shortfallMinutes` says by how much.
 */
export function ledgerOf(window: AccessWindow, needs: Needs, rules: RuleSet): Ledger {
  const isolated = isolationTimes(window, needs);
  const before = leadIn(window, needs, rules, isolated);
  const after = leadOut(window, needs, rules, isolated);
  const marginStart = window.end - rules.margin.minutes * MINUTE;
  const inEnd = Math.max(window.start, ...before.map((one) => one.end));
  const outStart = Math.min(marginStart, ...after.map((one) => one.start));

  const marginRows =
    rules.margin.minutes === 0
      ? []
      : partition(
          [
            {
              start: marginStart,
              end: window.end,
              rule: 'Required handback margin',
              kind: 'margin',
              why: `Kept free at the end.${rules.margin.source === undefined ? '' : ` Source: ${rules.margin.source}.`}`,
            },
          ],
          window,
        );
  const outRows = partition(after, {
    start: window.start,
    end: Math.max(window.start, marginStart),
  });
  const core = {
    start: Math.min(inEnd, Math.max(window.start, outStart)),
    end: Math.max(window.start, outStart),
  };
  const inRows = partition(before, { start: window.start, end: core.end });

  const stops = partition(
    [...curfews(window, needs, rules.curfews), ...shiftBreaks(window, rules)],
    core,
  );
  const barred = barredOf(window, needs);
  const noIsolation = barred.find((one) => one.code === 'isolation-not-booked');
  const open = core.end > core.start ? subtract([core], unionOf(stops)) : [];
  const work: LedgerRow[] = open.map((stretch) => ({
    ...stretch,
    rule: noIsolation ? 'Isolation not booked' : 'Usable',
    kind: noIsolation ? 'lead-in' : 'usable',
    minutes: lengthMinutes(stretch),
    why: noIsolation ? noIsolation.text : 'Left for work, with the required margin held.',
  }));
  const usable = noIsolation ? [] : open;
  return {
    window: window.id,
    needs,
    grossMinutes: lengthMinutes(window),
    usableMinutes: totalMinutes(usable),
    rows: [...inRows, ...work, ...stops, ...outRows, ...marginRows].sort(
      (a, b) => a.start - b.start || a.end - b.end,
    ),
    usable,
    shortfallMinutes: Math.max(0, Math.round((inEnd - outStart) / MINUTE)),
    barred,
  };
}

import {
  addMinutes,
  HOUR,
  overlaps,
  subtract,
  type Instant,
  type IntervalSet,
} from '../../calendar/index.js';
import {
  concreteSettingsSchema,
  liftingSettingsSchema,
  type ConcreteSettings,
  type CuringData,
  type LiftingSettings,
  type Plan,
} from '../../model/index.js';
import {
  gustOf,
  liftingClosedTime,
  liftingHours,
  liftOf,
  lifts,
  maturityCurve,
  maturityRate,
  reducedLimit,
  stretchesOf,
} from '../../rules/conditions/index.js';
import type { PlanResult } from '../../tables/index.js';
import type {
  ConcreteAnswer,
  CuringOfPour,
  LiftingAnswer,
  LiftingRequest,
  WindAnswer,
} from './types.js';
import { faultsOfTables } from './table-faults.js';

const liftingCaution =
  'From a forecast at 10 m, not the wind at the hook. Lifts need a plan by an appointed person, and the crane’s own manual governs.';
const curingCaution =
  'By the temperatures given. A maturity needs the curve of the mix and does not replace a strength test.';
/** Points of a curve after its start. */
const POINTS = 48;

/** To start from and to edit. The figure is one often used on sites in Great Britain; the crane's own chart governs. */
export const exampleLifting: LiftingSettings = liftingSettingsSchema.parse({
  resources: ['crane'],
  chartLimitMps: 9.8,
  heightMetres: 30,
  settleMinutes: 20,
  source: 'a figure often used on sites for mobile cranes; the crane’s own chart governs',
  sureness: 'from memory',
});

/** To start from and to edit: the maturity of a worked example, not of your mix. */
export const exampleConcrete: ConcreteSettings = concreteSettingsSchema.parse({
  maturity: 540,
  model: { model: 'temperature-time', datumC: 0 },
  source: 'a worked example of ASTM C1074 on a guide page; the figure of your mix governs',
  sureness: 'weak',
});

/** What wind and cold do to a plan: hours lost to lifting, and when concrete has cured. */
export function liftingOf(read: PlanResult, request: LiftingRequest): LiftingAnswer {
  const { plan, site } = read;
  const lifting = request.lifting ?? site.lifting ?? exampleLifting;
  const concrete = request.concrete ?? site.concrete ?? exampleConcrete;
  return {
    zone: plan.zone,
    wind: {
      ...windOf(read, lifting),
      isExample: request.lifting === undefined && site.lifting === undefined,
    },
    concrete: {
      ...concreteOf(read, concrete, request),
      isExample: request.concrete === undefined && site.concrete === undefined,
    },
    faults: faultsOfTables(read, 'forecast', 'temperatures'),
    cautions: [liftingCaution, curingCaution],
  };
}

function windOf(
  { plan, forecast }: PlanResult,
  settings: LiftingSettings,
): Omit<WindAnswer, 'isExample'> {
  const weather = stretchesOf(forecast);
  const lift = liftOf(settings);
  const [first, last] = [weather[0], weather.at(-1)];
  const reach = first && last && { start: first.start, end: last.end };
  return {
    settings,
    limitMps: settings.load
      ? reducedLimit(settings.chartLimitMps, settings.load)
      : settings.chartLimitMps,
    gusts: weather.map(({ start, end, row }) => ({
      start,
      end,
      gustMps: gustOf(row, settings.heightMetres) ?? null,
    })),
    stops: liftingClosedTime(settings, forecast).flatMap((one) =>
      one.stretches.map((stretch) => ({ ...stretch, why: one.why })),
    ),
    windows: plan.windows
      .filter((one) => one.status !== 'withdrawn' && reach && overlaps(one, reach))
      .map((one) => ({
        ...liftingHours(weather, lift, one),
        window: one.id,
        zone: one.zone,
        start: one.start,
        end: one.end,
      })),
    activities: plan.activities.filter((one) => lifts(one, settings)).map((one) => one.id),
  };
}

function concreteOf(
  { plan, temperatures, forecast }: PlanResult,
  settings: ConcreteSettings,
  { placements = [], pours = [] }: LiftingRequest,
): Omit<ConcreteAnswer, 'isExample'> {
  const rows = temperatures.length > 0 ? temperatures : forecast;
  const data: CuringData = {
    settings,
    temperatures: stretchesOf(rows).flatMap(({ start, end, row }) =>
      row.temperatureC === undefined ? [] : [{ start, end, celsius: row.temperatureC }],
    ),
  };
  const waitedFor = waitedForIn(plan);
  const ends = new Map<string, Instant>();
  for (const one of placements)
    if (waitedFor.has(one.activity))
      ends.set(one.activity, Math.max(one.to, ends.get(one.activity) ?? one.to));
  for (const one of pours) ends.set(one.activity, one.at);
  return {
    settings,
    unit: settings.model.model === 'temperature-time' ? '°C h' : 'h',
    pours: [...ends].map(([activity, at]) => ({
      ...pourOf(activity, at, waitedFor.get(activity) ?? [], data),
      gapMinutes: gapAfter(plan, activity),
    })),
    waitedFor: [...waitedFor.keys()],
  };
}

/** A gap after a finish that is so long is taken to be curing, where a link does not say what it is. */
const CURING_GAP = 12 * 60;

/** Activities whose curing something waits for, with what waits. */
function waitedForIn(plan: Plan): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const one of plan.activities)
    for (const link of one.after)
      if (link.cured || (link.from === 'finish' && link.gapMinutes >= CURING_GAP))
        found.set(link.activity, [...(found.get(link.activity) ?? []), one.id]);
  return found;
}

/** The longest fixed gap that the plan keeps after an activity; null where it keeps none. */
function gapAfter(plan: Plan, activity: string): number | null {
  const gaps = plan.activities.flatMap((one) =>
    one.after.filter((link) => link.activity === activity && !link.cured && link.gapMinutes > 0),
  );
  return gaps.length > 0 ? Math.max(...gaps.map((link) => link.gapMinutes)) : null;
}

function pourOf(
  activity: string,
  pouredAt: Instant,
  followers: readonly string[],
  data: CuringData,
): Omit<CuringOfPour, 'gapMinutes'> {
  const { settings, temperatures } = data;
  const ready = maturityCurve(data).readyAt(pouredAt);
  const isReady = Number.isFinite(ready);
  const end = isReady
    ? ready + Math.max(HOUR, (ready - pouredAt) * 0.15)
    : knownUntil(pouredAt, data);
  const curve = [{ at: pouredAt, maturity: 0 }];
  // Edges of the temperatures, so that the curve bends where they change, and even steps between.
  const steps = Array.from(
    { length: POINTS },
    (_, i) => pouredAt + ((end - pouredAt) * (i + 1)) / POINTS,
  );
  const edges = temperatures.flatMap((one) => [one.start, one.end]);
  const at = [...new Set([...steps, ...edges])]
    .filter((one) => one > pouredAt && one <= end)
    .sort((a, b) => a - b);
  let next = 0;
  for (const to of at) {
    const before = curve.at(-1)!;
    while (next < temperatures.length && temperatures[next]!.end <= before.at) next += 1;
    const row = temperatures[next];
    const celsius = row && row.start <= before.at ? row.celsius : settings.otherwiseC;
    if (celsius === undefined) break;
    const gained = (maturityRate(settings.model, celsius) * (to - before.at)) / HOUR;
    curve.push({ at: to, maturity: before.maturity + gained });
  }
  return {
    activity,
    followers,
    pouredAt,
    readyAt: isReady ? ready : null,
    needed: settings.maturity,
    curve,
    assumed: isReady ? assumedIn(pouredAt, ready, data) : [],
  };
}

function assumedIn(from: Instant, to: Instant, { temperatures }: CuringData): IntervalSet {
  return to > from ? subtract([{ start: from, end: to }], temperatures) : [];
}

/** How far temperatures reach from a moment without a gap; an hour past it where they do not reach at all. */
function knownUntil(from: Instant, { temperatures }: CuringData): Instant {
  let until = from;
  for (const one of temperatures) if (one.start <= until && one.end > until) until = one.end;
  return until > from ? until : addMinutes(from, 60);
}

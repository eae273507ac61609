import {
  addMinutes,
  HOUR,
  subtract,
  type Instant,
  type IntervalSet,
} from '../../calendar/index.js';
import type { CuringData } from '../../model/index.js';
import { maturityCurve, maturityRate } from '../../rules/conditions/index.js';
import type { CuringOfPour } from './types.js';

/** Points of a curve after its start. */
const POINTS = 48;

/** A pour gaining maturity from its moment on, and when it has what is needed. */
export function pourOf(
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
  const edges = temperatures.flatMap((temperature) => [temperature.start, temperature.end]);
  const at = [...new Set([...steps, ...edges])]
    .filter((value) => value > pouredAt && value <= end)
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

/** The stretches of a time for which no temperature is given. */
function assumedIn(from: Instant, to: Instant, { temperatures }: CuringData): IntervalSet {
  return to > from ? subtract([{ start: from, end: to }], temperatures) : [];
}

/** How far temperatures reach from a moment without a gap; an hour past it where they do not reach at all. */
function knownUntil(from: Instant, { temperatures }: CuringData): Instant {
  let until = from;
  for (const temperature of temperatures)
    if (temperature.start <= until && temperature.end > until) until = temperature.end;
  return until > from ? until : addMinutes(from, 60);
}

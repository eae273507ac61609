// Maturity of concrete. The formulas are written again here, so that a mistake elsewhere shows.
import type { CuringData, Instant, MaturityModel, Phrase } from './plan-types.js';
import { say } from './say.js';

const HOUR = 3_600_000;
/** Kelvin at 0 °C, as the published formulas round it. */
const FREEZING = 273;
/** Gas constant, kJ/(mol K). */
const GAS = 0.008314;
/** Relative rounding tolerance of the maturity; far less than a minute of curing. */
const TOLERANCE = 1e-7;

/** Maturity gained in an hour. */
function gainAt(model: MaturityModel, celsius: number): number {
  const inverse = (degrees: number): number => 1 / (degrees + FREEZING);
  switch (model.model) {
    case 'temperature-time':
      return celsius > model.datumC ? celsius - model.datumC : 0;
    case 'constant energy':
      return Math.exp(model.qKelvin * (inverse(model.referenceC) - inverse(celsius)));
    case 'energy by temperature': {
      const below = celsius < 20 ? 20 - celsius : 0;
      const energy = model.bKj + model.cKj * below;
      return Math.exp((energy * (inverse(20) - inverse(celsius))) / GAS);
    }
    case 'square law': {
      const above = celsius > -16 ? celsius + 16 : 0;
      return (above * above) / 1296;
    }
  }
}

/** Why concrete poured at `poured` has not cured at `by`; `undefined` when it has. */
export function whyNotCured(
  curing: CuringData | undefined,
  poured: Instant,
  by: Instant,
): Phrase | undefined {
  if (!curing) return say('curing-not-in-plan');
  const { settings, temperatures } = curing;
  const wanted = settings.maturity * (1 - TOLERANCE);
  let reached = 0;
  let at = poured;
  const gain = (until: Instant, celsius: number | undefined): boolean => {
    if (until <= at) return true;
    if (celsius === undefined) return false;
    reached += (gainAt(settings.model, celsius) * (until - at)) / HOUR;
    at = until;
    return true;
  };
  const unknown = say('curing-temperature-unknown');
  for (const { start, end, celsius } of temperatures) {
    if (end <= at || reached >= wanted) continue;
    if (start >= by) break;
    if (!gain(Math.min(start, by), settings.otherwiseC)) return unknown;
    if (reached < wanted) gain(Math.min(end, by), celsius);
  }
  if (reached < wanted && !gain(by, settings.otherwiseC)) return unknown;
  return reached >= wanted
    ? undefined
    : say('curing-reached', { reached: reached.toFixed(1), wanted: String(settings.maturity) });
}

import type { ConcreteSettings, CuringData } from '../../model/index.js';
import { stretchesOf } from '../../rules/conditions/index.js';
import type { PlanResult } from '../../tables/index.js';

/** What a plan's concrete cures by: its temperatures, or those of the forecast where it has none of its own. */
export function curingDataOf(
  { temperatures, forecast }: Pick<PlanResult, 'temperatures' | 'forecast'>,
  settings: ConcreteSettings,
): CuringData {
  const known = temperatures.length > 0 ? temperatures : forecast;
  return {
    settings,
    temperatures: stretchesOf(known).flatMap(({ start, end, row }) =>
      row.temperatureC === undefined ? [] : [{ start, end, celsius: row.temperatureC }],
    ),
  };
}

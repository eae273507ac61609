import {
  chanceText,
  type Allocation,
  type HandbackResult,
  type Results,
} from '../../src/engine/index.js';
import { defaultStrings } from '../handback/strings.js';
import type { WindowWork } from '../ribbon/work.js';
import { clockText, floatText } from '../shared/format.js';
import type { Desk } from './desk-parts.js';
import { pieceText, placementsBy } from './window-results.js';

interface Made {
  readonly plan: Allocation;
  readonly handbacks: readonly HandbackResult[];
  readonly work: readonly WindowWork[];
}

const made = new WeakMap<Results, Made>();

/** What the plan does in each window, as the picture draws it; null while there is no plan. */
export function ribbonWork(
  { planning, outlooks }: Desk,
  results: Results,
): readonly WindowWork[] | null {
  const plan = planning.shown;
  if (!plan) return null;
  const { handbacks } = outlooks;
  const before = made.get(results);
  if (before?.plan === plan && before.handbacks === handbacks) return before.work;
  const work = workOf(plan, handbacks, results);
  made.set(results, { plan, handbacks, work });
  return work;
}

function workOf(
  plan: Allocation,
  handbacks: readonly HandbackResult[],
  { plan: { windows, activities } }: Results,
): WindowWork[] {
  const placed = placementsBy(plan);
  const known = new Map(handbacks.map((one) => [one.window, one]));
  const titles = new Map(activities.map((one) => [one.id, one.title]));
  return windows.map(({ id, zone }) => {
    const handback = known.get(id);
    return {
      window: id,
      pieces: (placed.get(id) ?? []).map((one) => ({
        from: one.from,
        to: one.to,
        label: pieceText(one),
        short: one.activity,
        title: `${pieceText(one)} ${titles.get(one.activity) ?? ''}, ${clockText(one.from, zone)} to ${clockText(one.to, zone)}`,
      })),
      outcome: handback ? outcomeOf(handback) : '',
      ...(handback && handback.verdict !== 'held' && { harm: true }),
    };
  });
}

/** `35 min, 91.7 %`; a verdict other than held is named. */
function outcomeOf({ marginMinutes, simulation, verdict }: HandbackResult): string {
  const figures = `${floatText(marginMinutes)}, ${chanceText(simulation.outlook.onTime.probability)}`;
  return verdict === 'held' ? figures : `${figures} ${defaultStrings.verdict[verdict]}`;
}

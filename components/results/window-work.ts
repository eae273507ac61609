import { type Allocation, type HandbackResult, type Results } from '../../src/engine/index.js';
import { defaultStrings, type ResultStrings } from './strings.js';
import type { WindowWork } from '../ribbon/work.js';
import { clockText, floatText } from '../shared/format.js';
import { pieceText, placementsBy } from './window-results.js';
import { percentText } from '../shared/chance.js';

/** What a plan does in each window, and how the window's handback stands, as the ribbon draws it. */
export function windowWork(
  plan: Allocation,
  handbacks: readonly HandbackResult[],
  { plan: { windows, activities } }: Results,
  words: ResultStrings = defaultStrings,
): WindowWork[] {
  const placed = placementsBy(plan);
  const known = new Map(handbacks.map((handback) => [handback.window, handback]));
  const titles = new Map(activities.map((activity) => [activity.id, activity.title]));
  return windows.map(({ id, zone }) => {
    const handback = known.get(id);
    return {
      window: id,
      pieces: (placed.get(id) ?? []).map((placement) => ({
        from: placement.from,
        to: placement.to,
        label: pieceText(placement, words),
        short: placement.activity,
        title: `${pieceText(placement, words)} ${titles.get(placement.activity) ?? ''}, ${words.fromTo(clockText(placement.from, zone), clockText(placement.to, zone))}`,
      })),
      outcome: handback ? outcomeOf(handback, words) : '',
      ...(handback && handback.verdict !== 'held' && { harm: true }),
    };
  });
}

/** `35 min, 91.7 %`, in one piece; a verdict other than held is named after it. */
function outcomeOf(
  { marginMinutes, simulation, verdict }: HandbackResult,
  words: ResultStrings,
): string {
  const figures =
    `${floatText(marginMinutes)}, ${percentText(simulation.outlook.onTime.probability, simulation.runs)}`.replaceAll(
      ' ',
      '\u00A0',
    );
  return verdict === 'held' ? figures : `${figures} ${words.verdicts[verdict]}`;
}

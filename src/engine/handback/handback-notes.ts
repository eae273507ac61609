import type { Note, Plan } from '../../model/index.js';
import { chanceText, type HandbackResult } from '../../risk/index.js';

/** What the handback of these windows rests on and nobody said. */
export function handbackNotes(plan: Plan, results: readonly HandbackResult[]): readonly Note[] {
  const [first] = results;
  if (!first) return [];
  const spread = plan.activities.some((one) => one.work.spread !== undefined);
  return [
    ...(first.chanceWanted === null
      ? [
          {
            code: 'no-chance-wanted',
            text: `No chance of handing back on time is set as wanted (rules: handback.chance): "held" speaks of the margin alone. Advice and cut-offs by chance are measured against ${chanceText(first.confidence)}, an example.`,
          },
        ]
      : []),
    {
      code: 'chance-of-spreads',
      text: `${spread ? '' : 'No work has a spread: its lengths are taken as certain. '}The chances rest on the spreads and events that were entered. Sums of such spreads are thinner in the tail than recorded overruns, whose P95 is ${recordedTail} times their P50: enter what may go wrong as an event.`,
    },
  ];
}

/**
 * P95 over P50 of recorded overruns, in minutes.
 * @see the project's reference data of overruns in minutes, from public reports; a quotient, not a law
 */
const recordedTail = 8.1;

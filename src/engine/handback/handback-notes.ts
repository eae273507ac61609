import type { Note, Plan } from '../../model/index.js';
import {
  canShow,
  chanceText,
  thinTailText,
  unknownEvents,
  type HandbackResult,
} from '../../risk/index.js';

/** What the handback of these windows rests on and nobody said. */
export function handbackNotes(plan: Plan, results: readonly HandbackResult[]): readonly Note[] {
  const [first] = results;
  if (!first) return [];
  const spread = plan.activities.some((activity) => activity.work.spread !== undefined);
  const { runs } = first.simulation;
  return [
    ...(canShow(first.confidence, runs)
      ? []
      : [
          {
            code: 'few-runs',
            text: `${runs} runs cannot show a chance of ${chanceText(first.confidence)}: no window is called held by them. Ask for ${Math.ceil(3 / (1 - first.confidence))} or more, better 10,000.`,
          },
        ]),
    ...(first.chanceWanted === null
      ? [
          {
            code: 'no-chance-wanted',
            text: `No chance of handing back on time is set as wanted (rules: handback.chance): "held" speaks of the margin alone. Advice and cut-offs by chance are measured against ${chanceText(first.confidence)}, an example.`,
          },
        ]
      : []),
    ...results.flatMap(({ window, bookedBefore }) =>
      bookedBefore === null
        ? []
        : [
            {
              code: 'end-agreed',
              text: `${window}: an earlier end was agreed in the shift. Margin, verdict, chance, cut-offs and advice are held against it, no longer against the booked end.`,
            },
          ],
    ),
    ...unknownEvents(plan).map(({ event, of, name }) => ({
      code: 'event-not-known',
      text: `Event "${event}" never happens: there is no ${of} "${name}" in the plan.`,
    })),
    {
      code: 'chance-of-spreads',
      text: `${spread ? '' : 'No work has a spread: its lengths are taken as certain. '}${thinTailText}`,
    },
  ];
}

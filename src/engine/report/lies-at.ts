import { joined, type Phrase, type Placement } from '../../model/index.js';
import { zoneIn } from '../plan-out/plan-changes.js';
import { say } from './say.js';

/** Where visits of an activity lie, by the clocks of their windows, in the order given. */
export const liesAt = (plan: Parameters<typeof zoneIn>[0], visits: readonly Placement[]): Phrase =>
  joined(
    visits.map((visit) => {
      const zone = zoneIn(plan, visit);
      return say('lies-at', {
        window: visit.window,
        start: { at: visit.from, zone },
        end: { at: visit.to, zone },
        units: visit.units ?? null,
      });
    }),
    '; ',
  );

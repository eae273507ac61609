import type { Phrase } from '../../model/index.js';
import type { PlanName } from '../plan-out/plan-name.js';
import { say } from './say.js';

/** The name of a plan of work; a proposal says that it is one. */
export const planNamed = ({ id, name, revision, agreedAt, by }: PlanName, zone: string): Phrase =>
  name === undefined
    ? say('proposal-not-agreed', { id })
    : say('plan-named', {
        id,
        name,
        revision: revision ?? null,
        agreed: agreedAt === undefined ? null : { at: agreedAt, zone },
        by: by ?? null,
      });

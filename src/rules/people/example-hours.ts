import { limitSetSchema, type LimitSet } from '../../model/index.js';

const policy = 'a firm policy citing NR/L2/ERG/003 (2018)';

/**
 * Example limits on hours to edit: those that firms in Great Britain use for safety-critical work. Firms differ on the
 * week and on travel, so both are settings.
 */
export const exampleHours: LimitSet = limitSetSchema.parse({
  schema: 1,
  name: 'Safety-critical work, any seven days, travel counted',
  travel: 'counted',
  limits: [
    {
      limit: 'longest-turn',
      name: 'Turn of duty',
      minutes: 720,
      source: policy,
      sureness: 'read second-hand',
      // A turn is from booking on to booking off; travel has its own limit where a firm sets one.
      travel: 'not counted',
    },
    {
      limit: 'rest-between-turns',
      name: 'Rest between turns',
      minutes: 720,
      source: policy,
      sureness: 'read second-hand',
    },
    {
      limit: 'hours-in-seven-days',
      name: 'Hours in a week',
      minutes: 4320,
      week: 'rolling',
      source: policy,
      sureness: 'read second-hand',
    },
    {
      limit: 'turns-in-fourteen-days',
      name: 'Turns in fourteen days',
      turns: 13,
      source: policy,
      sureness: 'read second-hand',
    },
  ],
  note: 'An example. Put in the limits of your own employer and contract.',
});

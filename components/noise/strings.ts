import type { NoiseAnswer } from '../../src/engine/index.js';
import { cautions } from '../../src/model/index.js';
/** Every word the element says, but for names and figures. */
export const defaultStrings = {
  title: 'Noise and neighbours',
  empty:
    'No activity is marked as loud or has plant of the list. Import a table of plant with its level at 10 m.',
  by: (name: string) => `Held to: ${name}`,
  example:
    'These limits and this dwelling are examples, not yours. Change a figure, or take them into the plan.',
  take: 'Take these into the plan',
  cautions: 'Cautions',
  cautionLines: cautions,
  picture: 'Hours in which each activity may be loud',
  day: 'Day of the week',
  told: (over: number, count: number) =>
    `${over} of ${count} activities may not be loud at some hour. The table below has the levels.`,
  fromTo: (from: string, to: string) => `${from} to ${to}`,
  may: 'may be loud',
  mayNot: 'too loud',
  noLimit: 'no limit given',
  unknown: 'no level known',
  levels: 'Predicted level against the limit',
  activity: 'Activity',
  over: (db: string, level: string, limit: string) => `${level} dB, ${db} over ${limit}`,
  within: (level: string, limit: string) => `${level} dB, within ${limit}`,
  plant: (names: string) => `Plant: ${names}`,
  notListed: (names: string) => `No level known for: ${names}. Taken as silent.`,
  inputs: 'What the levels come from',
  metres: (name: string) => `${name}: distance`,
  screening: 'Screening',
  ground: 'Ground between',
  hard: 'hard',
  soft: 'soft',
  onTime: 'At work for',
  ofTheTime: '% of the time',
  limit: (period: string) => `Limit, ${period.toLowerCase()}`,
  use: 'Keep work out of the hours in which it would be too loud',
  consent: 'Applying for prior consent',
  window: 'Window',
  talk: 'Begin talks by',
  apply: 'Apply by the end of',
  state: 'State',
  states: {
    'in time': 'in time',
    'too late for talks': 'too late for talks',
    'too late': 'too late',
  } as Readonly<Record<NoiseAnswer['consent'][number]['state'], string>>,
  sources: 'Where the limits come from',
};

export type NoiseStrings = Readonly<typeof defaultStrings>;

import type { inTwo as english } from './in-two.js';

export const inTwo: typeof english = {
  window: '',
  'railway week': 'Die Sperrpause liegt in zwei Bahnwochen: Gezählt wird von der ersten an.',
  'four-week period':
    'Die Sperrpause liegt in zwei Vier-Wochen-Perioden: Gezählt wird von der ersten an.',
  'timetable change':
    'Die Sperrpause liegt in zwei Fahrplänen: Gezählt wird vom Beginn des ersten an.',
};

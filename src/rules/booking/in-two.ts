import type { Milestone } from './milestones.js';

/** That a window lies in two weeks, periods or timetables, in English. */
export const inTwoText = ({ before }: Pick<Milestone, 'before'>): string =>
  `The window lies in two of them: counted from the first ${before}.`;

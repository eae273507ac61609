import type { Milestone } from '../../src/engine/types.js';

/** What is said of a window that lies in two of what is counted from; it never lies in two windows. */
export const inTwo: Readonly<Record<Milestone['before'], string>> = {
  window: '',
  'railway week': 'The window lies in two of them: counted from the first railway week.',
  'four-week period': 'The window lies in two of them: counted from the first four-week period.',
  'timetable change': 'The window lies in two of them: counted from the first timetable change.',
};

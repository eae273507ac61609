import { cautions } from '../../src/model/index.js';
import type { ChangeKind } from './changes.js';

/** Every word the element says, but for names and figures. Sentences with a figure are functions of its text. */
export const defaultStrings = {
  noPlans:
    'There is no plan to compare yet. Work out a plan and keep it, change something, then work it out again: the two stand here side by side.',
  noBefore:
    'There is no earlier plan to compare with. Keep the plan you have now, change something, then work it out again.',
  noAfter:
    'There is no later plan to compare with. The kept plan waits: change something, then work it out again.',
  title: 'Two plans compared',
  before: 'Before',
  after: 'After',
  figure: 'Figure',
  change: 'Change',
  summary: 'Summary',

  finish: 'Finish',
  noFinish: 'none while work is left over',
  windowsUsed: 'Windows used',
  datesMet: 'Key dates met',
  ofDates: (met: string, all: string) => `${met} of ${all}`,
  leftOver: 'Left over',
  quality: 'How good it is',
  unverified: 'The independent check did not pass. Do not use this plan.',

  earlier: 'earlier',
  later: 'later',
  fewer: 'fewer',
  more: 'more',
  same: 'same',
  other: 'changed',
  nowFinishes: 'has a finish now',
  noLongerFinishes: 'has no finish now',

  keyDates: 'Key dates',
  noDates: 'Neither plan has a key date.',
  work: 'Work',
  due: 'Due',
  forecastOf: (name: string) => `${name}: forecast and float`,
  float: (float: string) => `float ${float}`,
  met: 'met',
  missed: 'missed',
  notAllPlaced: 'not all placed',
  noDate: 'no key date',
  moreFloat: 'more float',
  lessFloat: 'less float',
  nowAllPlaced: 'all placed now',
  noLongerAllPlaced: 'no longer all placed',
  dateAdded: 'key date added',
  dateRemoved: 'key date removed',
  dueWas: (moment: string) => `was ${moment}`,

  moves: 'Work that moved',
  nothingMoved: 'Nothing moved: every piece of work stands where it stood.',
  noWork: 'Neither plan places any work.',
  unchanged: (count: string) => `${count} unchanged.`,
  piece: 'piece of work',
  pieces: 'pieces of work',
  activity: 'Activity',
  what: 'What changed',
  units: 'Units',
  unitsTurn: (before: string, after: string) => `${before}, then ${after}`,
  outside: 'outside, needs no window',
  nowhere: 'not placed',
  noUnits: 'one piece',
  kind: {
    moved: 'moved to another window',
    retimed: 'same window, other time or units',
    placed: 'newly placed',
    dropped: 'no longer placed',
    'visit-more': 'one visit more',
    'visit-less': 'one visit less',
  } as Record<ChangeKind, string>,
  cautions: 'Cautions',
  cautionLines: cautions,
};

export type CompareStrings = Readonly<typeof defaultStrings>;

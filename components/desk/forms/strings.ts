import { countText } from '../../shared/format.js';
import type { Site } from '../../../src/model/index.js';
import type { Statement } from './state-unsaid.js';

/** Words of what is done to pieces of work, windows, bookings and what was left unsaid, and of what is to be seen to. */
export const defaultStrings = {
  piece: {
    moveTo: 'Move to',
    move: 'Move it there',
    setFree: 'Set free',
    fixHere: 'Fix it here',
    unitsInPlace: 'Units in place',
    record: 'Record and mend the plan',
    title: (activity: string, window: string) => `${activity} in ${window}`,
    fixed: (window: string) => `, fixed to ${window}`,
    freezeBefore: (day: string) => `Freeze all that begins before ${day}`,
    fixAll: (pack: string) => `Fix all of ${pack} where it lies`,
    setAllFree: 'Set all of it free',
    noRow: (activity: string) => `The work table has no row of ${activity}: nothing was changed.`,
    fixedTo: (activity: string, window: string) => `${activity} fixed to ${window}`,
    setFreeOf: (name: string) => `${name} set free`,
    fixedWhereItLies: (pack: string) => `${pack} fixed where it lies`,
    inSeveral: (activities: string) =>
      `${activities}: lies in several windows and can be fixed to one at most.`,
    unitsRecorded: (units: string, activity: string) => `${units} units of ${activity} in place`,
  },

  agreed: {
    label: (name: string) => `plan "${name}" agreed`,
    takenOut: (revision: number, name: string) => `earlier plan ${revision} "${name}" taken out`,
    allFree: 'all pieces set free',
    frozenUntil: (day: string) => `frozen until ${day}`,
    keeps: (count: number, day: string) =>
      `${countText(count, 'piece')} ${count === 1 ? 'begins' : 'begin'} before ${day} and ${count === 1 ? 'keeps its place' : 'keep their places'}.`,
    keepsButBroken: (count: number, day: string) =>
      `${countText(count, 'piece')} ${count === 1 ? 'begins' : 'begin'} before ${day} and ${count === 1 ? 'keeps its place' : 'keep their places'}, but for what no longer holds.`,
  },

  cut: {
    title: 'What this change would do',
    unreadable: 'As typed the window leaves the plan, and all its work with it:',
    rowUnread: 'Its row cannot be read.',
    looking: 'Looking at what would have to move',
    noPlan: 'No plan is made yet, so nothing would have to move.',
    noneLeaves: 'No piece of the plan would leave its window.',
    leave: (count: number) =>
      `${countText(count, 'piece')} of the plan would leave ${count === 1 ? 'its' : 'their'} window`,
    from: (before: string) => `from ${before} to`,
    noPlace: 'no place',
    outside: 'outside work',
    isolation: 'Isolation',
    noLongerDead: (section: string) => `${section}: not dead in the window any more`,
    deadForLess: (section: string, times: string) => `${section}: dead for less, ${times}`,
    fromTo: (from: string, to: string) => `${from} to ${to}`,
  },

  toChance: {
    set: 'Set the chance wanted',
    make: (chance: string) => `Make the plan to ${chance}`,
    title: 'The plan made to a chance',
    allReach: (windows: number, chance: string) => `All ${windows} windows used reach ${chance}`,
    someDoNot: (short: number, windows: number, chance: string) =>
      `${short} of ${windows} windows used do not surely reach ${chance}`,
    runs: (runs: string) => `in ${runs} simulated runs`,
    reached: (chance: string, margin: string, needed: string) =>
      `${chance} with a margin of ${margin}. This work would need ${needed} here.`,
    putAway: 'Put away',
    windowsUsed: 'Windows used',
    allFinished: 'All work finished',
    due: (pack: string, due: string) => `${pack}, due ${due}`,
    notPlaced: 'not placed',
    met: 'met',
    missed: 'missed',
    costs: 'What it costs',
    without: 'Plan without',
    with: 'This plan',
    noDateMoves: 'No key date moves.',
    noPlaceWithIt: (work: string) => `Has no place with it: ${work}.`,
  },

  unsaid: {
    restsOn: 'What the answer rests on',
    notUsed: (file: string) => `${file}: not used.`,
    holds: (field: string) => `It holds the ${field}`,
    whatHolds: (heading: string) => `What ${heading} holds`,
    somethingElse: 'It holds something else',
    leaveUnread: 'Leave it unread',
    showHeading: 'Show the heading',
    staysUnread: (heading: string) => `"${heading}" stays unread`,
    readAs: (heading: string, field: string) => `"${heading}" is read as ${field}`,
    title: {
      'fit-after': (count: number) =>
        `Not said, for ${countText(count, 'pair')} of work in different windows: whether the line is fit to run in between`,
      shared: (count: number) =>
        `Not said, for ${countText(count, 'pair')} of work in one place at one time: whether both may be there`,
    } as Readonly<Record<Statement, (count: number) => string>>,
    one: {
      'fit-after': (activity: string, _: string) => `The line is fit to run after ${activity}`,
      shared: (activity: string, other: string) => `${activity} and ${other} may share the place`,
    } as Readonly<Record<Statement, (activity: string, other: string) => string>>,
    many: {
      'fit-after': 'The line is fit to run after each of them',
      shared: 'They may all share the place',
    } as Readonly<Record<Statement, string>>,
    pairs: (count: number) => countText(count, 'pair'),
    onlyKnown:
      'Say so only where it is known. Where it is not, write in the work table what makes the line good again (“made good by”), or that a piece needs the place for itself (“occupies: alone”).',
    sameFor: (count: number, pack: string) => `The same for all ${count} of ${pack}`,
    showRow: 'Show the row',
    saidOf: (what: string) => `said of ${what}`,
    allPairs: 'all pairs',
    both: (one: string, other: string) => `${one} and ${other}`,
    package: (pack: string) => `package ${pack}`,
  },

  booking: {
    countedFrom: 'Weeks are counted back from',
    window: 'the day of the window',
    week: 'the first day of its planning week',
    weekBegins: 'The planning week begins on',
    changed: 'how booking weeks are counted changed',
    hits: (window: string, percent: number) => `${window} hits ${percent} % of the trains`,
  },

  urgent: {
    now: 'now',
    fault: 'Fault',
    toCheck: 'To check',
    inFile: (file: string, line: number) => `${file}, line ${line}`,
    showCell: 'Show the cell',
    late: (time: string) => `${time} late`,
    by: (day: string) => `by ${day}`,
    booking: 'Booking',
    due: (window: string, milestone: string, due: string) => `${window}: ${milestone}, due ${due}`,
    bookingDates: 'Booking dates',
    hours: 'Hours',
    over: (crew: string, turn: string, limit: string) =>
      `${crew}, ${turn}: over the limit “${limit}”`,
    hoursAndMends: 'Hours and mends',
    inSomeHours: 'in some hours',
    noise: 'Noise',
    tooLoud: (activity: string, hours: number) =>
      `${activity}: over a limit in ${hours} of 168 hours of a week`,
    noiseByHour: 'Noise by hour',
  },

  shift: {
    cutOffNow: (clock: string, name: string) => `Cut-off now, ${clock}: ${name}.`,
    toCutOff: (minutes: number, name: string, clock: string) =>
      `${minutes} min to the cut-off of ${name}, ${clock}.`,
    seen: 'Seen',
    initials: 'Your initials',
    sound: 'Sound before a cut-off',
    vibration: 'Vibration',
    notStored: 'The entry is shown but could not be stored: save the log to a file before closing.',
  },

  site: {
    limitsChanged: {
      hours: 'limits: hours changed',
      noise: 'limits: noise changed',
      lifting: 'limits: lifting changed',
      concrete: 'limits: concrete changed',
    } as Readonly<Record<keyof Site, string>>,
    changes: (count: number) => `${countText(count, 'change')} of the roster`,
    changed: (what: string) => `roster: ${what}`,
    made: (what: string) => `Made in the roster: ${what}. Undo takes it back.`,
  },

  /** What is said of a question that has no answer, before the words of its error. */
  failed: {
    figures: 'The figures could not be worked out',
    plan: 'No plan was worked out',
    agreed: 'The agreed plan could not be held against the tables',
    rules: 'The change of the rules was not weighed',
    cut: 'What would have to move was not worked out',
    handback: 'No handback outlook was worked out',
    live: 'No forecast was worked out',
    price: 'No price was worked out',
    options: 'No options were worked out',
    account: 'No account was worked out',
    book: 'No booking dates were worked out',
    people: 'The roster was not checked',
    noise: 'The noise was not worked out',
    lifting: 'Wind and curing were not worked out',
  },
};

export type FormStrings = Readonly<typeof defaultStrings>;

// Words for what is wrong with what a cell says and nobody can read, or can read two ways. They are loaded when they are first shown.
import type { Problem, ProblemWords, SayProblem } from '../../model/index.js';

const aTimeOfDay = 'Write a time of day such as 05:30, to the minute.';
const aDateAndTime = 'Write a date and time such as 2027-03-28 23:30 or 28/03/2027 23:30.';
const aDuration = 'Write minutes such as 90, or 1:30, 1 h 30, 1.5 h, 90 min.';
const aPlace = 'Write metres such as 1234, or 1.2 km, 12 mi 34 ch, 12m 340y.';
const sections = 'Write S1, or S1 [00:40-05:10], with ; between several.';
const whatItWaitsFor =
  'Write A20, A20 + 48 h, start of A20 + 30 min, or A20 when cured, with ; between several.';
const whatItNeeds = 'Write a name, a colon and a number, with ; between: crane:1; gang:2.';

/** Why one of two readings of a time that clocks show twice was taken. */
export type TwiceReason = keyof typeof twiceReasons;
const twiceReasons = {
  'first-shown': 'the first time that clocks show it',
  'stops-sooner': 'the earlier stops work sooner',
  'leaves-less': 'the later leaves less time',
  'holds-longer': 'the row then holds longer',
  'forgives-less': 'it forgives less',
  'allows-less': 'it allows less',
  'shorter-isolation': 'it gives the shorter isolation',
  'shorter-stretch': 'it gives the shorter stretch',
  'whole-hour': 'a start at the first doubled minute takes in the whole doubled hour',
  'delayed-more': 'a train due sooner is delayed more',
  'counts-more': 'it counts more hours',
  'available-less': 'it makes the resource available for less time',
};
const weekdays = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const wholeFrom = (least: number): string =>
  `Write a whole number of at least ${least}, such as ${Math.max(least, 8)}.`;

export const cellProblems = {
  'no-such-time': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a time of day.`,
    aTimeOfDay,
  ],
  'not-on-a-minute': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" has seconds; times here are to the minute.`,
    aTimeOfDay,
  ],
  'no-such-date': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a day of the calendar.`,
    aDateAndTime,
  ],
  'two-digit-year': ({
    text,
    year,
  }: {
    readonly text: string;
    readonly year: number;
  }): ProblemWords => [
    `"${text}" gives the year as ${String(year).padStart(4, '0')}.`,
    `Write all four digits of the year; meant ${2000 + year}?`,
  ],
  'year-not-likely': ({
    text,
    year,
    firstYear,
    lastYear,
  }: {
    readonly text: string;
    readonly year: number;
    readonly firstYear: number;
    readonly lastYear: number;
  }): ProblemWords => [
    `"${text}" is in the year ${year}; years from ${firstYear} to ${lastYear} are read.`,
    'Correct the year.',
  ],
  'two-digit-year/short': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" gives the year with two digits.`,
    'Write all four digits of the year.',
  ],
  'date-not-read': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a date or time.`,
    aDateAndTime,
  ],
  'date-not-read/time': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a date and time.`,
    aDateAndTime,
  ],
  'offset-not-read': ({ offset }: { readonly offset: string }): ProblemWords => [
    `"${offset}" is not an offset from UTC.`,
    'Write an offset such as +01:00 or Z.',
  ],
  'weekday-disagrees': ({
    text,
    actual,
  }: {
    readonly text: string;
    readonly actual: number;
  }): ProblemWords => [
    `"${text}" names another day of the week than the date falls on (${weekdays[actual]!}).`,
    'Correct the date or the day of the week.',
  ],
  'not-on-a-minute/serial': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" does not fall on a whole minute.`,
    'Write the time to the minute.',
  ],
  'not-a-number': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a number.`,
    'Write a number such as 12.5.',
  ],
  'number-reads-two-ways': ({
    text,
    whole,
    part,
  }: {
    readonly text: string;
    readonly whole: string;
    readonly part: string;
  }): ProblemWords => [
    `"${text}" can mean ${whole}${part} or ${whole}.${part}.`,
    `Write ${whole}${part} or ${whole}.${part}.`,
  ],
  'number-too-small/negative': ({ text }: { readonly text: string }): ProblemWords => [
    `${text} is less than 0.`,
    'Write 0 or more.',
  ],
  'not-a-percentage': ({ text }: { readonly text: string }): ProblemWords => [
    `${text} is no share of a whole.`,
    'Write 0 to 100.',
  ],
  'duration-negative': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is less than nothing.`,
    aDuration,
  ],
  'duration-not-read/minutes': ({
    text,
    m,
  }: {
    readonly text: string;
    readonly m: string;
  }): ProblemWords => [
    `"${text}" has ${m} minutes beside its hours, which is an hour or more.`,
    aDuration,
  ],
  'duration-not-read': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a duration.`,
    aDuration,
  ],
  'duration-not-whole-minutes': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a whole number of minutes.`,
    aDuration,
  ],
  'duration-too-long': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is longer than ten years.`,
    aDuration,
  ],
  'time-at-clock-change': ({
    local,
    zone,
    next,
  }: {
    readonly local: string;
    readonly zone: string;
    readonly next: string;
  }): ProblemWords => [
    `At ${local} clocks in ${zone} go straight to ${next}: that moment is taken.`,
    `Write ${next} to say it without doubt.`,
  ],
  'time-does-not-exist': ({
    local,
    zone,
    last,
    next,
  }: {
    readonly local: string;
    readonly zone: string;
    readonly last: string;
    readonly next: string;
  }): ProblemWords => [
    `${local} does not exist in ${zone}: clocks go from ${last} straight to ${next}.`,
    `Write ${last} or before, or ${next} or after.`,
  ],
  'offset-not-of-zone': ({
    zone,
    moment,
  }: {
    readonly zone: string;
    readonly moment: string;
  }): ProblemWords => [
    `The offset written is not the one of ${zone} then; the moment is ${moment} there.`,
    'Check the offset, or leave it out.',
  ],
  'time-happens-twice': ({
    zone,
    earlier,
    later,
    moment,
    why,
  }: {
    readonly zone: string;
    readonly earlier: string;
    readonly later: string;
    readonly moment: string;
    readonly why: TwiceReason;
  }): ProblemWords => [
    `Clocks in ${zone} show this time twice: ${earlier} and ${later}. ${moment} is taken: ${twiceReasons[why]}.`,
    `Write the one meant, with its offset: ${earlier} or ${later}.`,
  ],
  'date-missing': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is a time without a date.`,
    'Write the date too.',
  ],
  'chainage-not-read': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a place along the line.`,
    aPlace,
  ],
  'place-too-far': ({ text, km }: { readonly text: string; readonly km: number }): ProblemWords => [
    `"${text}" is ${km} km along the line; is it a date, or another unit?`,
    aPlace,
  ],
  'chainage-not-read/split': ({
    text,
    large,
    smallInLarge,
    small,
  }: {
    readonly text: string;
    readonly large: string;
    readonly smallInLarge: number;
    readonly small: string;
  }): ProblemWords => [
    `"${text}" does not split into whole ${large} and less than ${smallInLarge} ${small}.`,
    aPlace,
  ],
  'comma-in-list': ({ withComma }: { readonly withComma: string }): ProblemWords => [
    `"${withComma}" is read as one name.`,
    'Where several are meant, put ; between them.',
  ],
  'time-missing': ({ what }: { readonly what: string }): ProblemWords => [
    `The ${what} is a date without a time.`,
    'Write the time too, such as 2027-03-28 23:30.',
  ],
  'date-missing/start': (): ProblemWords => [
    'The start is a time without a date.',
    'Write the date too.',
  ],
  'end-not-after-start': (): ProblemWords => [
    'The end is not after the start.',
    'Correct the start or the end.',
  ],
  'section-twice': ({ section }: { readonly section: string }): ProblemWords => [
    `Section "${section}" is named twice for the same time.`,
    'Name each section once, or once for each of its times, which must lie apart.',
  ],
  'isolation-not-read/section': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}" is not a section with times.`,
    sections,
  ],
  'isolation-not-read/pair': ({ text }: { readonly text: string }): ProblemWords => [
    `"[${text}]" is not a pair of times.`,
    sections,
  ],
  'isolation-outside-window': ({
    section,
    start,
    end,
  }: {
    readonly section: string;
    readonly start: string;
    readonly end: string;
  }): ProblemWords => [
    `Section "${section}" from ${start} to ${end} is not wholly inside the window.`,
    'Give times inside the window.',
  ],
  'isolation-not-read/round': ({ section }: { readonly section: string }): ProblemWords => [
    `Section "${section}" ends at the time of day at which it starts.`,
    'Leave the times out where it is dead all the time, or write each stretch with its dates.',
  ],
  'isolation-not-read/none': ({ section }: { readonly section: string }): ProblemWords => [
    `Section "${section}" has no time in the window.`,
    sections,
  ],
  'isolation-cut-to-window': ({
    section,
    start,
    end,
  }: {
    readonly section: string;
    readonly start: string;
    readonly end: string;
  }): ProblemWords => [
    `Section "${section}" is isolated at this time of each day; where the window starts or ends within it, only the time inside counts: ${start} to ${end}.`,
    'Where a night is not isolated, write each stretch with its dates: S1 [2027-07-24 23:30 - 2027-07-25 07:50]; S1 [...].',
  ],
  'curing-from-start': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}": curing is counted from a finish.`,
    whatItWaitsFor,
  ],
  'gap-negative/lead': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}" asks to start before what it waits for.`,
    whatItWaitsFor,
  ],
  'after-not-read': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}" names no activity.`,
    whatItWaitsFor,
  ],
  'gap-negative/gap': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}" has a gap below nothing.`,
    whatItWaitsFor,
  ],
  'after-not-read/gap': (
    { part, gap }: { readonly part: string; readonly gap: Problem },
    say: SayProblem,
  ): ProblemWords => [`"${part}": ${say(gap)}`, whatItWaitsFor],
  'resource-not-read': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}" does not name one resource.`,
    whatItNeeds,
  ],
  'resource-not-read/number': ({ part }: { readonly part: string }): ProblemWords => [
    `"${part}": the number is not a whole one of at least 1.`,
    whatItNeeds,
  ],
  'resource-twice': ({ resource }: { readonly resource: string }): ProblemWords => [
    `"${resource}" is named twice.`,
    'Name it once, with the sum.',
  ],
  'made-good-two-ways': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" says none and names activities.`,
    'Write none where the line is fit to run after it, or the activities that make it so.',
  ],
  'speed-not-read': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a speed.`,
    'Write a number with its unit, such as 20 mph or 50 km/h, or none.',
  ],
  'speed-unit-missing': ({
    text,
    number,
  }: {
    readonly text: string;
    readonly number: string;
  }): ProblemWords => [
    `"${text}" does not say whether it is mph or km/h.`,
    `Write ${number} mph or ${number} km/h.`,
  ],
  'wind-not-read': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a wind speed.`,
    'Write 9.5, or 21 mph.',
  ],
  'wind-out-of-range': ({
    text,
    most,
  }: {
    readonly text: string;
    readonly most: number;
  }): ProblemWords => [`No wind blows at ${text}.`, `Write 0 to ${most} m/s.`],
  'temperature-out-of-range': ({ text }: { readonly text: string }): ProblemWords => [
    `${text} is no such temperature.`,
    'Write -70 to 110 °C.',
  ],
  'not-a-whole-number': ({
    text,
    least,
  }: {
    readonly text: string;
    readonly least: number;
  }): ProblemWords => [`"${text}" is not a whole number.`, wholeFrom(least)],
  'number-too-small': ({
    value,
    least,
  }: {
    readonly value: number;
    readonly least: number;
  }): ProblemWords => [`${value} is less than ${least}.`, wholeFrom(least)],
  'number-too-large': ({
    value,
    least,
  }: {
    readonly value: number;
    readonly least: number;
  }): ProblemWords => [`${value} is too large.`, wholeFrom(least)],
  'not-yes-or-no': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not known here.`,
    'Write yes or no.',
  ],
  'place-not-known': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not known here.`,
    'Write inside (needs the closure) or outside (does not).',
  ],
  'occupies-not-known': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not known here.`,
    'Write alone (nobody else on its lines and place while it goes on) or shared.',
  ],
  'status-not-known': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not known here.`,
    'Write requested, offered, confirmed or withdrawn.',
  ],
};

// Words for what is wrong with a row that cannot be used, or was read as nobody may have meant. They are loaded when they are first shown.
import { durationText } from '../../calendar/index.js';
import type { ProblemWords } from '../../model/index.js';

const listed = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

export const rowProblems = {
  'cell-blank': ({ field }: { readonly field: string }): ProblemWords => [
    `"${field}" is needed and the cell is blank.`,
    'Fill it in.',
  ],
  'cell-too-long': ({
    length,
    longestCell,
  }: {
    readonly length: number;
    readonly longestCell: number;
  }): ProblemWords => [
    `The cell holds ${length} characters; at most ${longestCell} are read.`,
    'Shorten it.',
  ],
  'name-too-long': ({
    length,
    longestName,
  }: {
    readonly length: number;
    readonly longestName: number;
  }): ProblemWords => [`The name has ${length} characters.`, `Keep it to ${longestName}.`],
  'name-holds-separator': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" holds a ;, which separates names elsewhere.`,
    'Take the ; out.',
  ],
  'name-twice': ({ id, line }: { readonly id: string; readonly line: number }): ProblemWords => [
    `"${id}" is already the name of line ${line}.`,
    'Give each row a name of its own.',
  ],
  'place-reads-two-ways': ({
    own,
    number,
  }: {
    readonly own: string;
    readonly number: string;
  }): ProblemWords => [
    `"${own}", in a table with places in miles, can be ${number} metres or ${number} miles.`,
    `Write ${number} mi for miles, or ${Number(number) / 1000} km for metres.`,
  ],
  'extent-half-given': ({
    other,
    field,
  }: {
    readonly other: string;
    readonly field: string;
  }): ProblemWords => [
    `"${other}" is given and "${field}" is blank.`,
    'Give both ends, or neither where the extent does not matter.',
  ],
  'zone-not-known': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a time zone known here.`,
    'Write one such as Europe/London.',
  ],
  'finished-before-started': (): ProblemWords => [
    'It finished before it started.',
    'Correct one of the two times.',
  ],
  'before-shift': ({ moment }: { readonly moment: string }): ProblemWords => [
    `${moment} is more than half a day before any window that is open at the moment asked about.`,
    'Correct the date.',
  ],
  'recorded-twice': ({
    first,
    subject,
  }: {
    readonly first: number;
    readonly subject: string;
  }): ProblemWords => [
    `Line ${first} records ${subject} already.`,
    'Keep one row of each: the last that is known.',
  ],
  'not-repeated': ({ activity }: { readonly activity: string | undefined }): ProblemWords => [
    `${activity ?? 'A step'} is not repeated work: it has no units.`,
    'Leave the cell blank, and write when it started and finished.',
  ],
  'more-units': ({
    units,
    activity,
    most,
  }: {
    readonly units: number;
    readonly activity: string | undefined;
    readonly most: number;
  }): ProblemWords => [
    `${units} units are done, and ${activity} has ${most} left to do.`,
    'Count the units done in this window.',
  ],
  'expected-of-line': (): ProblemWords => [
    'Only the granting of a line can be expected.',
    'Name the line in the column "line".',
  ],
  'asked-of-handback': ({ handedBack }: { readonly handedBack: string }): ProblemWords => [
    'A row that says when the line was asked for names nothing else.',
    `Leave activity and line blank, or write the step "${handedBack}".`,
  ],
  'agreed-of-handback': ({ handedBack }: { readonly handedBack: string }): ProblemWords => [
    'A row that says which end was agreed names nothing else.',
    `Leave activity and line blank, or write the step "${handedBack}".`,
  ],
  'activity-or-step': (): ProblemWords => [
    'The row must name an activity, a step or a line, and not both.',
    'Write one of them.',
  ],
  'line-not-known': ({
    line,
    lines,
  }: {
    readonly line: string;
    readonly lines: readonly string[];
  }): ProblemWords => [
    `No window has a line "${line}".`,
    `Write it as the windows do: ${listed(lines)}.`,
  ],
  'activity-not-known/seen': ({ activity }: { readonly activity: string }): ProblemWords => [
    `There is no activity "${activity}" in the plan.`,
    'Write it as the work file does.',
  ],
  'step-not-known': ({
    step,
    steps,
  }: {
    readonly step: string | undefined;
    readonly steps: readonly string[];
  }): ProblemWords => [
    `There is no step "${step}" in the rules.`,
    `Write it as the rules do: ${listed(steps)}.`,
  ],
  'step-not-there': ({
    stage,
    step,
  }: {
    readonly stage: string;
    readonly step: string | undefined;
  }): ProblemWords => [
    `The ${stage} has no step "${step}".`,
    'Correct the stage, or leave it blank.',
  ],
  'step-twice': ({ step }: { readonly step: string | undefined }): ProblemWords => [
    `Both the lead-in and the lead-out have a step "${step}".`,
    'Write lead-in or lead-out in a column "stage".',
  ],
  'cell-blank/left': (): ProblemWords => [
    'The least or the most minutes left are given, and the most likely are not.',
    'Fill in the most likely.',
  ],
  'spread-out-of-order': ({
    low,
    likely,
    high,
  }: {
    readonly low: number;
    readonly likely: number;
    readonly high: number;
  }): ProblemWords => [
    `Least ${low}, most likely ${likely} and most ${high} do not rise.`,
    'The least is at most the most likely, and that at most the most.',
  ],
  'not-a-whole-number/units': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a whole number.`,
    'Write the count of units in place.',
  ],
  'stage-not-known': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is no stage.`,
    'Write lead-in or lead-out.',
  ],
  'event-holds-up': (): ProblemWords => [
    'The row must say what the event holds up: an activity, a step or a moment.',
    'Fill in one of "activity", "step" and "at".',
  ],
  'not-a-chance': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is no chance.`,
    'Write 0 to 1, or per cent with the sign.',
  ],
  'work-long': ({ minutes }: { readonly minutes: number }): ProblemWords => [
    `It goes on for ${durationText(minutes)} without a stop.`,
    'Correct the minutes, or leave them where they are meant so.',
  ],
  'minutes-and-units': (): ProblemWords => [
    'The row gives both minutes, as for a whole piece of work, and units, as for repeated work.',
    'Leave one of the two blank.',
  ],
  'duration-missing': (): ProblemWords => [
    'The row gives neither minutes nor units.',
    'Give minutes for a whole piece of work, or units and minutes per unit for repeated work.',
  ],
  'units-missing': ({ field }: { readonly field: string }): ProblemWords => [
    `"${field}" has a meaning only for repeated units, and "units" is blank.`,
    'Give units instead of minutes, or clear this cell.',
  ],
  'minutes-per-unit-missing': (): ProblemWords => [
    'Units are given without the minutes one of them takes.',
    'Fill in the minutes per unit.',
  ],
  'more-done-than-units': ({
    done,
    units,
  }: {
    readonly done: number;
    readonly units: number;
  }): ProblemWords => [
    `${done} units are done of ${units}.`,
    'Correct the units or how many are done.',
  ],
  'number-too-small/unit': (): ProblemWords => [
    'A unit takes no time.',
    'Give at least one minute.',
  ],
  'spread-half-given': ({
    other,
    field,
  }: {
    readonly other: string;
    readonly field: string;
  }): ProblemWords => [`"${other}" is given and "${field}" is blank.`, 'Give both, or neither.'],
  'spread-out-of-order/work': ({
    low,
    likely,
    high,
  }: {
    readonly low: number;
    readonly likely: number;
    readonly high: number;
  }): ProblemWords => [
    `Low ${low}, likely ${likely} and high ${high} do not rise.`,
    'Low is at most the likely minutes, and those at most high.',
  ],
  'key-date-before-not-before': (): ProblemWords => [
    'The key date leaves no time after the work may begin.',
    'Correct the key date or "not before".',
  ],
  'level-out-of-range': ({ text }: { readonly text: string }): ProblemWords => [
    `${text} is no such level.`,
    'Write dB(A) at 10 m.',
  ],
  'sureness-not-known': ({
    text,
    surenesses,
  }: {
    readonly text: string;
    readonly surenesses: readonly string[];
  }): ProblemWords => [
    `"${text}" is not known here.`,
    `Write one of: ${surenesses.join(', ')}; or leave it blank for weak.`,
  ],
  'resource-disagrees': ({
    field,
    value,
    before,
  }: {
    readonly field: string;
    readonly value: number;
    readonly before: number;
  }): ProblemWords => [
    `"${field}" is ${value} here and ${before} on an earlier row of the same resource.`,
    'Say it once, or the same each time.',
  ],
  'daily-band-half-given': (): ProblemWords => [
    'One of "from" and "to" is a time of day and the other is not.',
    'Give two times of day for every day, or two dates.',
  ],
  'end-not-after-start/resource': (): ProblemWords => [
    'The availability ends before it starts.',
    'Correct "from" or "to".',
  ],
  'no-such-time/resource': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a time of day.`,
    'Write a time such as 05:30.',
  ],
  'name-twice/turn': ({
    id,
    before,
  }: {
    readonly id: string;
    readonly before: number;
  }): ProblemWords => [
    `"${id}" is already the name of line ${before}.`,
    'Give each turn a name of its own, or leave the cell blank.',
  ],
  'name-twice/train': ({
    id,
    before,
  }: {
    readonly id: string;
    readonly before: number;
  }): ProblemWords => [
    `Train "${id}" at that moment is already on line ${before}.`,
    'Delete one of the rows.',
  ],
  'number-too-small/train': ({ text }: { readonly text: string }): ProblemWords => [
    `${text} is less than 0.`,
    'Write 1 for an ordinary train.',
  ],
  'time-missing/train': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is a date without a time.`,
    'Write the time too.',
  ],
  'date-missing/train': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is a time without a date.`,
    'Write the date too, or name a window that is in the plan.',
  ],
  'cell-blank/wind': (): ProblemWords => [
    'The row gives neither a mean wind nor a gust.',
    'Fill in one of them, or delete the row.',
  ],
  'wind-at-other-height': ({ height }: { readonly height: number }): ProblemWords => [
    `Speeds given at ${height} m are brought down or up to 10 m by a formula.`,
    'Give speeds at 10 m to leave no doubt.',
  ],
  'time-twice': ({ before }: { readonly before: number }): ProblemWords => [
    `The moment is already on line ${before}.`,
    'Delete one of the rows; in the hour that clocks repeat, write the offset.',
  ],
  'height-out-of-range': ({ text }: { readonly text: string }): ProblemWords => [
    `${text} is no such height.`,
    'Write metres above ground.',
  ],
  'window-not-known/placement': ({
    where,
    outsideText,
  }: {
    readonly where: string;
    readonly outsideText: string;
  }): ProblemWords => [
    `There is no window "${where}" in the plan.`,
    `Write it as the windows file does, or "${outsideText}" for work that needs no window.`,
  ],
  'ends-before-start': ({ minutes }: { readonly minutes: number }): ProblemWords => [
    `It ends ${minutes} minutes before it begins.`,
    'Correct one of the two times.',
  ],
  'activity-not-known/placement': ({ id }: { readonly id: string }): ProblemWords => [
    `There is no activity "${id}" in the plan.`,
    'Write it as the work file does, or take the row out.',
  ],
  'units-of-whole-work': ({ id }: { readonly id: string }): ProblemWords => [
    `"${id}" is one piece of work and has no units.`,
    'Leave the cell blank.',
  ],
  'cell-blank/units': ({ id }: { readonly id: string }): ProblemWords => [
    `"${id}" is repeated work, and the row does not say how many units are done.`,
    'Write how many.',
  ],
  'units-beyond-left': ({
    units,
    id,
    still,
  }: {
    readonly units: number;
    readonly id: string;
    readonly still: number;
  }): ProblemWords => [
    `${units} units of "${id}" are planned here, and ${still} are left for this row.`,
    'Lower the count, or correct units and done in the work file.',
  ],
  'not-a-whole-number/planned': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a whole number of at least 1.`,
    'Write a count.',
  ],
};

// Runs one command line.
import {
  decisionsSchema,
  noDecisions,
  type Decisions,
  type Fault,
  type Note,
  type Plan,
} from '../model/index.js';
import { priceBookSchema } from '../model/price-book.js';
import { bookingRulesSchema, exampleBooking, type BookingRules } from '../rules/booking/index.js';
import { decodeBytes, jsonFrom, type PlanResult } from '../tables/index.js';
import { allocate } from './verbs/allocate.js';
import { enveloped, type Answer } from './answer.js';
import { readArguments, UsageError, type Arguments } from './arguments.js';
import { book } from './verbs/book.js';
import { faultLines, longestFault } from './print/fault-lines.js';
import { fit } from './verbs/fit.js';
import { handback } from './verbs/handback.js';
import { afterWrongUse, command, helpOf, usageLines, usualWidth } from './help.js';
import { columnsOf, layOut } from './print/layout.js';
import type { Block } from './print/blocks.js';
import { options, verbs, type Verb } from './options.js';
import { clipped, complain, jsonText, write, type Written } from './print/output.js';
import { price } from './verbs/price.js';
import { readActuals } from './read/read-actuals.js';
import { readHolidays } from './read/read-holidays.js';
import { readMoment } from './read/read-moment.js';
import { readPlacements, type GivenFile } from './read/read-plan.js';
import { withRiskFile } from './read/read-risk.js';
import { fileName, readFile, readSources } from './read/read-sources.js';
import { lookAhead } from './verbs/look-ahead.js';
import { lifting, noise, people } from './verbs/site.js';
import { readShareArguments } from './share-arguments.js';
import { shareHelpLines } from './share-help.js';
import { summary } from './verbs/summary.js';
import { usable } from './verbs/usable.js';
import { version } from './version.js';
import { workLine } from './print/work-line.js';
import { writeReport } from './write-report.js';

/** Unusable input. Its faults are already on standard error. */
class BadInput extends Error {
  override name = 'BadInput';
}

/** Text laid out to the width of the screen; `usual` is the width when there is no screen. */
const onScreen = (blocks: readonly Block[], stream: NodeJS.WriteStream, usual?: number): string =>
  layOut(blocks, columnsOf(stream, process.env['COLUMNS']) ?? usual);

/** Writes a line to standard error. */
const printError = (line: string): void => complain(onScreen([line], process.stderr));

function reportAll(faults: readonly Fault[]): void {
  for (const line of faultLines(faults)) printError(line);
}

/** @throws {BadInput} When one of them is an error. */
function report(faults: readonly Fault[]): void {
  reportAll(faults);
  if (faults.some((fault) => fault.severity === 'error')) throw new BadInput();
}

const textOf = (path: string, option: string): string => decodeBytes(readFile(path, option)).text;

/** The plan with the risk settings of `--risk`, if given. */
function planFor({ risk, verb }: Arguments, plan: Plan): Plan {
  if (risk === undefined || !(options.risk.verbs as readonly Verb[]).includes(verb)) return plan;
  const read = withRiskFile(plan, risk);
  report(read.faults);
  return read.plan;
}

/** Go/no-go points and work that cannot be undone, from the given file; none without a file. */
function decisionsFor({ decisions: path }: Arguments): Decisions {
  if (path === undefined) return noDecisions;
  const { value, faults } = jsonFrom(
    textOf(path, 'decisions'),
    fileName(path),
    'decisions',
    decisionsSchema,
  );
  report(faults);
  return value!;
}

/** The booking rules from the given file; without a file the example, with a note that says so. */
function bookingFor({ booking: path }: Arguments): BookingRules {
  if (path === undefined) {
    printError(`note: no --booking FILE was given: the dates follow "${exampleBooking.name}".`);
    return exampleBooking;
  }
  const { value, faults } = jsonFrom(
    textOf(path, 'booking'),
    fileName(path),
    'booking',
    bookingRulesSchema,
  );
  report(faults);
  return value!;
}

/** The moment of `--at`, or the present. */
const nowFor = ({ at }: Arguments, { zone }: Plan): number =>
  at === undefined ? Date.now() : readMoment(at, 'at', zone);

/** The plan of work that an option names; undefined without the option. */
async function givenBy(
  option: 'plan' | 'from' | 'against',
  asked: Arguments,
  { plan }: PlanResult,
): Promise<GivenFile | undefined> {
  const path = asked[option];
  if (path === undefined) return undefined;
  const { faults, ...given } = await readPlacements(path, option, plan);
  report(faults);
  return given;
}

function answer(
  asked: Arguments,
  read: PlanResult,
  { given, against }: { readonly given?: GivenFile; readonly against?: GivenFile },
): Answer | Promise<Answer> {
  const plan = planFor(asked, read.plan);
  switch (asked.verb) {
    case 'usable':
      return usable(plan, { isolation: asked.isolation, loud: asked.loud });
    case 'fit':
      return fit(read);
    case 'allocate':
      return allocate(plan, asked, given, against);
    case 'handback': {
      const decisions = decisionsFor(asked);
      if (asked.at === undefined) {
        if (asked.actuals !== undefined) throw new UsageError('--actuals needs --at TIME');
        return handback(plan, asked, decisions, Date.now(), { given });
      }
      const at = readMoment(asked.at, 'at', plan.zone);
      if (asked.actuals === undefined)
        return handback(plan, asked, decisions, at, { given, seen: { at, actuals: [] } });
      const { faults, ...seen } = readActuals(asked.actuals, plan, at);
      report(faults);
      return handback(plan, asked, decisions, at, { given, seen: { at, ...seen } });
    }
    case 'price': {
      if (asked.prices === undefined) throw new UsageError('price needs --prices FILE');
      const { value, faults } = jsonFrom(
        textOf(asked.prices, 'prices'),
        fileName(asked.prices),
        'prices',
        priceBookSchema,
      );
      report(faults);
      if (asked.holidays === undefined) return price(plan, read, value!, asked, { given });
      const days = readHolidays(asked.holidays);
      report(days.faults);
      return price(plan, read, value!, asked, { given, holidays: days.holidays });
    }
    case 'book':
      return book(plan, asked, bookingFor(asked), nowFor(asked, plan), given);
    case 'summary':
      return summary(plan, asked, given, against);
    case 'look-ahead':
      return lookAhead(read, plan, asked, bookingFor(asked), nowFor(asked, plan), given);
    case 'people':
      return people(read);
    case 'noise':
      return noise(
        read,
        asked.at === undefined ? undefined : readMoment(asked.at, 'at', plan.zone),
      );
    case 'lifting':
      return lifting(
        read,
        asked.pour === undefined || asked.at === undefined
          ? undefined
          : { activity: asked.pour, at: readMoment(asked.at, 'at', plan.zone) },
      );
  }
}

/** The requested help, version or schema; `undefined` when none is requested. */
async function asked(words: readonly string[]): Promise<string | undefined> {
  if (words.includes('--version')) return `possession-fit ${version}`;
  const verb = words.find((word): word is Verb => (verbs as readonly string[]).includes(word));
  if (words.includes('--help') || words.includes('-h'))
    return onScreen(verb ? helpOf(verb) : usageLines(), process.stdout, usualWidth);
  if (!words.includes('--schema')) return undefined;
  const { answerSchema } = await import('./answers/index.js');
  const schema = verb
    ? answerSchema(verb)
    : Object.fromEntries(verbs.map((text) => [text, answerSchema(text)]));
  return JSON.stringify(schema, null, 2);
}

/** Runs a server until it is stopped. */
async function runShare(words: readonly string[]): Promise<number> {
  const tell = async (blocks: readonly Block[]): Promise<void> => {
    await write([`${onScreen(blocks, process.stdout, usualWidth)}\n`]);
  };
  if (words.includes('--help') || words.includes('-h')) {
    await tell(shareHelpLines(command));
    return 0;
  }
  const { share } = await import('./share.js');
  const isTerminal = process.stdout.isTTY;
  return share(readShareArguments(words), { print: tell, complain: printError, isTerminal });
}

/** Runs one command line and returns its exit code. Unexpected errors are thrown. */
export async function main(words: readonly string[]): Promise<number> {
  try {
    if (words.find((word) => !word.startsWith('-')) === 'share') return await runShare(words);
    const help = await asked(words);
    const { code, end } =
      help === undefined
        ? await answered(readArguments(words))
        : { code: 0, end: await write([`${help}\n`]) };
    if (end instanceof Error)
      throw new UsageError(`the answer could not be written: ${end.message}`);
    return code;
  } catch (error) {
    if (error instanceof BadInput) return 1;
    if (!(error instanceof UsageError)) throw error;
    printError(clipped(error.message, longestFault));
    complain(`\n${onScreen(afterWrongUse(words), process.stderr, usualWidth)}`);
    return 2;
  }
}

/**
 * The answer from the readable rows, with exit code 1 if any row could not be read. A fault that is not of a row, such
 * as a missing column, means there is no answer.
 */
async function answered(asked: Arguments): Promise<{ code: number; end: Written }> {
  const done = workLine(asked.verb, process.stderr.isTTY ? process.stderr.fd : undefined);
  try {
    const { pieces, code } = await answerTo(asked);
    // Some answers are still being calculated while they are written.
    if (process.stdout.isTTY) await done();
    return { code, end: await write(pieces) };
  } finally {
    await done();
  }
}

async function answerTo(asked: Arguments): Promise<{ pieces: Iterable<string>; code: number }> {
  const sources = await readSources(asked);
  reportAll(sources.faults);
  const errors = sources.faults.filter((fault) => fault.severity === 'error');
  if (errors.some((fault) => asked.strict || fault.row === undefined)) throw new BadInput();
  const given = (await givenBy('plan', asked, sources)) ?? (await givenBy('from', asked, sources));
  const against = await givenBy('against', asked, sources);
  const files = { ...(given && { given }), ...(against && { against }) };
  const found = await answer(asked, sources, files);
  const whole = enveloped(found, [
    ...sources.notes.map(({ code, text, count }) => ({ code, text, count })),
    ...unusedNotes(asked),
  ]);
  if (found.report) await writeReport(asked, found.report, whole.notes);
  const pieces = asked.json ? jsonText(whole.json) : [`${onScreen(whole.text, process.stdout)}\n`];
  return { pieces, code: errors.length > 0 ? 1 : 0 };
}

const unusedNotes = ({ verb, unused }: Arguments): readonly Note[] =>
  unused.map((option) => ({
    code: 'option-not-used',
    text: `--${option} is not used by ${verb}.`,
  }));

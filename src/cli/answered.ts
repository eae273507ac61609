// Reads the files that a command line names, and answers it by the code of its verb, which is loaded when it is asked.
import type { Note, Plan } from '../model/index.js';
import type { PlanResult } from '../tables/index.js';
import { enveloped, type Answer } from './answer.js';
import { readArguments, type Arguments } from './arguments.js';
import { BadInput, UsageError } from './errors.js';
import { options, type Verb } from './options.js';
import { jsonText, write, type Written } from './print/output.js';
import { report, reportAll } from './print/report-faults.js';
import { onScreen } from './print/screen.js';
import { workLine } from './print/work-line.js';
import { readMoment } from './read/read-moment.js';
import type { GivenFile } from './read/read-plan.js';
import { readSources } from './read/read-sources.js';

/** The plan with the risk settings of `--risk`, if given. */
async function planFor({ risk, verb }: Arguments, plan: Plan): Promise<Plan> {
  if (risk === undefined || !(options.risk.verbs as readonly Verb[]).includes(verb)) return plan;
  const { withRiskFile } = await import('./read/read-risk.js');
  const read = withRiskFile(plan, risk);
  report(read.faults);
  return read.plan;
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
  const { readPlacements } = await import('./read/read-plan.js');
  const { faults, ...given } = await readPlacements(path, option, plan);
  report(faults);
  return given;
}

async function answer(
  asked: Arguments,
  read: PlanResult,
  { given, against }: { readonly given?: GivenFile; readonly against?: GivenFile },
): Promise<Answer> {
  const plan = await planFor(asked, read.plan);
  switch (asked.verb) {
    case 'usable': {
      const { usable } = await import('./verbs/usable.js');
      return usable(plan, { isolation: asked.isolation, loud: asked.loud });
    }
    case 'fit': {
      const { fit } = await import('./verbs/fit.js');
      return fit(read);
    }
    case 'allocate': {
      const { allocate } = await import('./verbs/allocate.js');
      return allocate(plan, asked, given, against);
    }
    case 'handback': {
      const { handback } = await import('./verbs/handback.js');
      const { decisionsFor } = await import('./read/read-settings.js');
      const decisions = decisionsFor(asked);
      if (asked.at === undefined) {
        if (asked.actuals !== undefined) throw new UsageError('--actuals needs --at TIME');
        return handback(plan, asked, decisions, Date.now(), { given });
      }
      const at = readMoment(asked.at, 'at', plan.zone);
      if (asked.actuals === undefined)
        return handback(plan, asked, decisions, at, { given, seen: { at, actuals: [] } });
      const { readActuals } = await import('./read/read-actuals.js');
      const { faults, ...seen } = readActuals(asked.actuals, plan, at);
      report(faults);
      return handback(plan, asked, decisions, at, { given, seen: { at, ...seen } });
    }
    case 'price': {
      const { price } = await import('./verbs/price.js');
      const { pricesFor } = await import('./read/read-settings.js');
      const prices = pricesFor(asked);
      if (asked.holidays === undefined) return price(plan, read, prices, asked, { given });
      const { readHolidays } = await import('./read/read-holidays.js');
      const { holidays, faults } = readHolidays(asked.holidays);
      report(faults);
      return price(plan, read, prices, asked, { given, holidays });
    }
    case 'book': {
      const { book } = await import('./verbs/book.js');
      const { bookingFor } = await import('./read/read-settings.js');
      return book(plan, asked, bookingFor(asked), nowFor(asked, plan), given);
    }
    case 'summary': {
      const { summary } = await import('./verbs/summary.js');
      return summary(plan, asked, given, against);
    }
    case 'look-ahead': {
      const { lookAhead } = await import('./verbs/look-ahead.js');
      const { bookingFor } = await import('./read/read-settings.js');
      return lookAhead(read, plan, asked, bookingFor(asked), nowFor(asked, plan), given);
    }
    case 'people': {
      const { people } = await import('./verbs/site.js');
      return people(read);
    }
    case 'noise': {
      const { noise } = await import('./verbs/site.js');
      return noise(
        read,
        asked.at === undefined ? undefined : readMoment(asked.at, 'at', plan.zone),
      );
    }
    case 'lifting': {
      const { lifting } = await import('./verbs/site.js');
      return lifting(
        read,
        asked.pour === undefined || asked.at === undefined
          ? undefined
          : { activity: asked.pour, at: readMoment(asked.at, 'at', plan.zone) },
      );
    }
  }
}

/**
 * The answer from the readable rows, with exit code 1 if any row could not be read. A fault that is not of a row, such
 * as a missing column, means there is no answer.
 *
 * @throws {UsageError | BadInput} When there is no answer.
 */
export async function answered(
  words: readonly string[],
): Promise<{ readonly code: number; readonly end: Written }> {
  const asked = readArguments(words);
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
  if (found.report) {
    const { writeReport } = await import('./write-report.js');
    await writeReport(asked, found.report, whole.notes);
  }
  const pieces = asked.json ? jsonText(whole.json) : [`${onScreen(whole.text, process.stdout)}\n`];
  return { pieces, code: errors.length > 0 ? 1 : 0 };
}

const unusedNotes = ({ verb, unused }: Arguments): readonly Note[] =>
  unused.map((option) => ({
    code: 'option-not-used',
    text: `--${option} is not used by ${verb}.`,
  }));

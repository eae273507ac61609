// The command line: see `usage` in cli/arguments.ts. Exit 0 done, 1 the input is bad, 2 wrong usage.
import { basename } from 'node:path';
import {
  decisionsSchema,
  faultText,
  noDecisions,
  type Decisions,
  type Fault,
} from './model/index.js';
import { priceBookSchema } from './model/price-book.js';
import { bookingRulesSchema, exampleBooking } from './rules/booking/index.js';
import { decodeBytes, jsonFrom, type PlanResult } from './tables/index.js';
import { allocate } from './cli/allocate.js';
import { withCautions, type Answer } from './cli/answer.js';
import { readArguments, usage, UsageError, type Arguments } from './cli/arguments.js';
import { book } from './cli/book.js';
import { fit } from './cli/fit.js';
import { handback } from './cli/handback.js';
import { price } from './cli/price.js';
import { readActuals } from './cli/read-actuals.js';
import { readHolidays } from './cli/read-holidays.js';
import { readMoment } from './cli/read-moment.js';
import { readFile, readSources } from './cli/read-sources.js';
import { lifting, noise, people } from './cli/site.js';
import { usable } from './cli/usable.js';

/** Input that cannot be used; every fault has been told. */
class BadInput extends Error {
  override name = 'BadInput';
}

function tell(faults: readonly Fault[]): void {
  for (const fault of faults) console.error(`${fault.severity}: ${faultText(fault)}`);
  if (faults.some((fault) => fault.severity === 'error')) throw new BadInput();
}

const textOf = (path: string, option: string): string => decodeBytes(readFile(path, option)).text;

/** Go/no-go points and what cannot be undone, from the file named; none where none is. */
function decisionsFor({ decisions: path }: Arguments): Decisions {
  if (path === undefined) return noDecisions;
  const { value, faults } = jsonFrom(
    textOf(path, 'decisions'),
    basename(path),
    'decisions',
    decisionsSchema,
  );
  tell(faults);
  return value!;
}

function answer(asked: Arguments, read: PlanResult): Answer {
  const { plan, trains } = read;
  switch (asked.verb) {
    case 'usable':
      return usable(plan, { isolation: asked.isolation, loud: asked.loud });
    case 'fit':
      return fit(plan);
    case 'allocate':
      return allocate(plan, asked);
    case 'handback': {
      const decisions = decisionsFor(asked);
      if (asked.at === undefined) {
        if (asked.actuals !== undefined) throw new UsageError('--actuals needs --at TIME');
        return handback(plan, asked, decisions, Date.now());
      }
      const at = readMoment(asked.at, 'at', plan.zone);
      if (asked.actuals === undefined)
        return handback(plan, asked, decisions, at, { at, actuals: [] });
      const { actuals, faults } = readActuals(asked.actuals, plan, at);
      tell(faults);
      return handback(plan, asked, decisions, at, { at, actuals });
    }
    case 'price': {
      if (asked.prices === undefined) throw new UsageError('price needs --prices FILE');
      const { value, faults } = jsonFrom(
        textOf(asked.prices, 'prices'),
        basename(asked.prices),
        'prices',
        priceBookSchema,
      );
      tell(faults);
      if (asked.holidays === undefined) return price(plan, trains, value!, asked);
      const days = readHolidays(asked.holidays);
      tell(days.faults);
      return price(plan, trains, value!, asked, days.holidays);
    }
    case 'book': {
      const now = asked.at === undefined ? Date.now() : readMoment(asked.at, 'at', plan.zone);
      if (asked.booking === undefined) {
        console.error(`note: no --booking FILE: "${exampleBooking.name}" is used.`);
        return book(plan, asked, exampleBooking, now);
      }
      const { value, faults } = jsonFrom(
        textOf(asked.booking, 'booking'),
        basename(asked.booking),
        'booking',
        bookingRulesSchema,
      );
      tell(faults);
      return book(plan, asked, value!, now);
    }
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

/** Carries out one command line and gives its exit code. What nobody foresaw is thrown. */
export async function main(words: readonly string[]): Promise<number> {
  try {
    if (words.includes('--help') || words.includes('-h')) {
      console.log(usage);
      return 0;
    }
    const asked = readArguments(words);
    const sources = await readSources(asked);
    tell(sources.faults);
    const { json, text } = answer(asked, sources);
    process.stdout.write(`${asked.json ? JSON.stringify(json) : withCautions(text)}\n`);
    return 0;
  } catch (error) {
    if (error instanceof BadInput) return 1;
    if (!(error instanceof UsageError)) throw error;
    console.error(`${error.message}\n\n${usage}`);
    return 2;
  }
}

process.exitCode = await main(process.argv.slice(2));

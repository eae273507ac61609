// Parses the words of a command line, by the table in `options.ts`.
import { parseArgs } from 'node:util';
import { isZone } from '../calendar/index.js';
import type { Objective } from '../planner/search/types.js';
import { chosenColumns, type ChosenColumn, type DateOrder } from '../tables/index.js';
import {
  fileOptions,
  options,
  parseArgsOptions,
  verbs,
  type Option,
  type OptionName,
  type Verb,
} from './options.js';
import { UsageError } from './errors.js';

const objectives: readonly Objective[] = ['key-dates', 'margins', 'finish', 'fewest-windows'];

const dateOrders: readonly DateOrder[] = ['day-first', 'month-first'];

/** A parsed command line. Paths are as typed; `-` is standard input. */
export interface Arguments {
  readonly verb: Verb;
  /** Given options that the verb does not use. */
  readonly unused: readonly string[];
  readonly windows: string;
  readonly work?: string;
  readonly rules?: string;
  readonly resources?: string;
  readonly prices?: string;
  readonly trains?: string;
  /** Local dates of public holidays. */
  readonly holidays?: string;
  readonly roster?: string;
  readonly forecast?: string;
  readonly temperatures?: string;
  readonly plant?: string;
  readonly site?: string;
  readonly booking?: string;
  readonly actuals?: readonly string[];
  readonly decisions?: string;
  /** A plan of work to answer from. */
  readonly plan?: string;
  /** A plan of work to repair. */
  readonly from?: string;
  /** Work of the plan to repair that begins before this day keeps its place. */
  readonly 'frozen-until'?: string;
  /** Another plan of work, to list what changed. */
  readonly against?: string;
  /** How many weeks to look ahead, the shortest first. */
  readonly weeks?: readonly number[];
  readonly risk?: string;
  /** Chance of handing back on time that `allocate` plans to, above 0 and below 1. */
  readonly chance?: number;
  readonly calendar?: string;
  /** Whether to price other ways to do the work of the window too. */
  readonly options: boolean;
  /** A file to write; its extension sets the format. */
  readonly out?: string;
  /** Chosen meanings of headings, for all tables. */
  readonly columns: readonly ChosenColumn[];
  /** The order of day and month, for all tables. */
  readonly dates?: string;
  readonly zone?: string;
  /** Whether an error in any row refuses the whole answer. */
  readonly strict: boolean;
  readonly json: boolean;
  readonly isolation: readonly string[];
  readonly loud: boolean;
  readonly first: Objective;
  /** Time limit of the search. */
  readonly seconds?: number;
  readonly seed: number;
  readonly runs: number;
  readonly at?: string;
  /** Activity whose pour is over at `at`. */
  readonly pour?: string;
  readonly window?: string;
  /** Overruns to price, whole minutes, in the order typed. */
  readonly minutes?: readonly number[];
}

type TableOption = 'work' | 'roster' | 'forecast' | 'plant';
const neededOf: { readonly [V in Verb]?: readonly (readonly ['FILE', TableOption])[] } = {
  people: [['FILE', 'roster']],
  noise: [
    ['FILE', 'work'],
    ['FILE', 'plant'],
  ],
  lifting: [['FILE', 'forecast']],
};

/** Options that a verb refuses if it does not use them, because a file would be expected to be read or written. */
const refusedElsewhere = [
  'actuals',
  'calendar',
  'out',
  'plan',
  'from',
  'frozen-until',
  'against',
] as const;

/** File extensions that each verb can write by `--out`. */
const outEndings: { readonly [V in Verb]?: readonly string[] } = {
  price: ['.csv', '.xlsx'],
  allocate: ['.csv', '.xlsx', '.ics'],
  summary: ['.csv', '.xlsx', '.ics'],
};

const most = { seed: 2 ** 32 - 1, runs: 1_000_000, weeks: 520 } as const;

function whole(
  text: string | undefined,
  option: keyof typeof most,
  fallback: number,
  least: number,
): number {
  if (text === undefined) return fallback;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least || value > most[option])
    throw new UsageError(
      `--${option} takes a whole number of at least ${least} and at most ${most[option]}, not "${text}"`,
    );
  return value;
}

type Words = Readonly<Record<string, string | boolean | string[] | undefined>>;

/** Given options that the verb does not use; the answer names them. */
function unusedOf(verb: Verb, values: Words): readonly string[] {
  return Object.entries(options as Record<string, Option>).flatMap(([name, { verbs: takers }]) =>
    takers && !takers.includes(verb) && values[name] !== undefined && values[name] !== false
      ? [name]
      : [],
  );
}

type TextOption = Exclude<
  OptionName,
  'actuals' | 'columns' | 'isolation' | 'loud' | 'options' | 'strict' | 'json'
>;
type Values = { readonly [K in TextOption]?: string } & {
  readonly actuals?: string[];
  readonly columns?: string[];
  readonly isolation?: string[];
  readonly loud?: boolean;
  readonly options?: boolean;
  readonly strict?: boolean;
  readonly json?: boolean;
};

/** A week: later than that is another plan, not an overrun. */
const MOST_MINUTES = 10_080;
const MOST_OVERRUNS = 48;

/** `45` or `45,90,180`: overruns in whole minutes, each once. */
function minutesList(text: string): readonly number[] {
  const parts = text.split(',').map((item) => item.trim());
  if (parts.length > MOST_OVERRUNS)
    throw new UsageError(
      `--minutes takes at most ${MOST_OVERRUNS} overruns at once, not ${parts.length}`,
    );
  const minutes = parts.map((part) => {
    if (!/^\d+$/.test(part) || Number(part) > MOST_MINUTES)
      throw new UsageError(
        `--minutes takes whole minutes from 0 to ${MOST_MINUTES} (a week), apart by commas, such as 45,90,180; ${part === '' ? 'one of them is blank' : `not "${part}"`}`,
      );
    return Number(part);
  });
  return [...new Set(minutes)];
}

/** `4` or `1,4,12`: weeks to look ahead, each once, the shortest first. */
function weeksList(text: string): readonly number[] {
  const all = text.split(',').map((item) => whole(item.trim(), 'weeks', 0, 1));
  if (all.length > 12) throw new UsageError(`--weeks takes at most 12 spans, not ${all.length}`);
  return [...new Set(all)].sort((a, b) => a - b);
}

function readColumns(texts: readonly string[]): readonly ChosenColumn[] {
  try {
    return texts.flatMap(chosenColumns);
  } catch (error) {
    throw new UsageError(`--columns: ${(error as Error).message}`);
  }
}

/** @throws {UsageError} When the words do not make a command. */
export function readArguments(words: readonly string[]): Arguments {
  const parsed = (() => {
    try {
      return parseArgs({ args: [...words], allowPositionals: true, options: parseArgsOptions() });
    } catch (error) {
      throw new UsageError((error as Error).message.split('. To specify')[0]);
    }
  })();
  const { positionals } = parsed;
  const values = parsed.values as Values;
  const [verb, ...rest] = positionals;
  if (verb === undefined) throw new UsageError('no verb given');
  if (!verbs.includes(verb as Verb)) throw new UsageError(`unknown verb "${verb}"`);
  if (rest.length > 0) throw new UsageError(`unexpected "${rest.join(' ')}"`);
  if (values.windows === undefined) throw new UsageError('--windows FILE is needed');
  const needsWork: readonly Verb[] = ['fit', 'allocate', 'handback', 'summary', 'look-ahead'];
  if (needsWork.includes(verb as Verb) && values.work === undefined)
    throw new UsageError(`${verb} needs --work FILE`);
  for (const [needs, option] of neededOf[verb as Verb] ?? [])
    if (values[option] === undefined) throw new UsageError(`${verb} needs --${option} ${needs}`);
  const unused = unusedOf(verb as Verb, values);
  for (const option of refusedElsewhere)
    if (unused.includes(option))
      throw new UsageError(
        `${verb} takes no --${option}; it goes with ${options[option].verbs.join(' and ')}`,
      );
  const standard = fileOptions.filter((option) => values[option as keyof Values] === '-');
  if (standard.length > 1)
    throw new UsageError(
      `standard input can be only one file, and - is given for ${standard.map((option) => `--${option}`).join(' and ')}`,
    );
  const frozen = values['frozen-until'] !== undefined;
  if (values.chance !== undefined && values.from !== undefined && !frozen)
    throw new UsageError(
      '--chance makes a new plan and --from repairs one: give only one of them, or add --frozen-until DATE to say what keeps its place',
    );
  if (frozen && values.from === undefined)
    throw new UsageError('--frozen-until needs --from PLAN: it keeps pieces of that plan in place');
  if (values.pour !== undefined && values.at === undefined)
    throw new UsageError('--pour needs --at TIME');
  if (verb === 'price' && (values.window === undefined || values.minutes === undefined)) {
    throw new UsageError('price needs --window W and --minutes N[,N...]');
  }
  const first = (values.first ?? 'key-dates') as Objective;
  if (!objectives.includes(first))
    throw new UsageError(`--first is one of ${objectives.join(', ')}, not "${first}"`);
  if (values.dates !== undefined && !dateOrders.includes(values.dates as DateOrder))
    throw new UsageError(`--dates is one of ${dateOrders.join(', ')}, not "${values.dates}"`);
  if (values.zone !== undefined && !isZone(values.zone))
    throw new UsageError(`unknown time zone "${values.zone}"; write one such as Europe/London`);
  const seconds = values.seconds === undefined ? undefined : Number(values.seconds);
  if (seconds !== undefined && !(seconds > 0 && seconds <= 86_400))
    throw new UsageError(`--seconds takes a number above 0, not "${values.seconds}"`);
  const endings = outEndings[verb as Verb] ?? [];
  if (
    values.out !== undefined &&
    !endings.some((ending) => values.out!.toLowerCase().endsWith(ending))
  )
    throw new UsageError(
      `--out takes the name of a file that ends in ${endings.join(' or ')}, not "${values.out}"`,
    );
  const chance = values.chance === undefined ? undefined : Number(values.chance);
  if (chance !== undefined && !(chance > 0 && chance < 1))
    throw new UsageError(
      `--chance takes a number above 0 and below 1, such as 0.95, not "${values.chance}"`,
    );
  const {
    windows,
    columns,
    isolation,
    loud,
    options: ways,
    strict,
    json,
    first: _first,
    seconds: _seconds,
    seed,
    runs,
    minutes,
    weeks,
    chance: _chance,
    ...files
  } = values;
  return {
    ...files,
    verb: verb as Verb,
    unused,
    windows,
    columns: readColumns(columns ?? []),
    isolation: (isolation ?? [])
      .flatMap((text) => text.split(';'))
      .map((text) => text.trim())
      .filter((text) => text !== ''),
    loud: loud ?? false,
    options: ways ?? false,
    strict: strict ?? false,
    json: json ?? false,
    first,
    ...(seconds !== undefined && { seconds }),
    seed: whole(seed, 'seed', 1, 0),
    ...(chance === undefined ? {} : { chance }),
    runs: whole(runs, 'runs', 10_000, 1),
    ...(minutes === undefined ? {} : { minutes: minutesList(minutes) }),
    ...(weeks === undefined ? {} : { weeks: weeksList(weeks) }),
  };
}

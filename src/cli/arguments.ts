import { parseArgs } from 'node:util';
import { isZone } from '../calendar/index.js';
import type { Objective } from '../planner/search/types.js';

export const verbs = [
  'usable',
  'fit',
  'allocate',
  'handback',
  'price',
  'book',
  'people',
  'noise',
  'lifting',
] as const;
export type Verb = (typeof verbs)[number];

const objectives: readonly Objective[] = ['key-dates', 'margins', 'finish', 'fewest-windows'];

/** The words of a command line that cannot be carried out. The message says what is wrong. */
export class UsageError extends Error {
  override name = 'UsageError';
}

/** What a command line asks for. Paths are as typed. */
export interface Arguments {
  readonly verb: Verb;
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
  readonly actuals?: string;
  readonly decisions?: string;
  readonly calendar?: string;
  readonly zone?: string;
  readonly json: boolean;
  readonly isolation: readonly string[];
  readonly loud: boolean;
  readonly first: Objective;
  readonly seconds: number;
  readonly seed: number;
  readonly runs: number;
  readonly at?: string;
  /** Activity whose pour is over at `at`. */
  readonly pour?: string;
  readonly window?: string;
  readonly minutes?: number;
}

export const usage = `possession-fit: which work fits which possession

  npm run --silent cli -- VERB --windows FILE [--work FILE] [--rules FILE] [--resources FILE]
                               [--prices FILE] [--trains FILE] [--zone ZONE] [--json]
                               [--site FILE] [--roster FILE] [--forecast FILE] [--temperatures FILE] [--plant FILE]

  usable     what is left of each window      [--isolation "S1;S2"] [--loud]
  fit        which package fits which window
  allocate   the best plan over all windows   [--first ${objectives.join('|')}] [--seconds N]
  handback   margins, cut-off times, chance   [--seed N] [--runs N] [--at TIME --actuals FILE] [--seconds N]
                                              [--decisions FILE] [--calendar FILE]
  price      what an overrun costs            --window W --minutes N [--holidays FILE] [--seed N] [--runs N]
  book       booking dates of each window     [--booking FILE] [--at TIME] [--calendar FILE]
  people     a roster held to limits on hours --roster FILE
  noise      hours in which work may be loud  --work FILE --plant FILE [--at TIME]
  lifting    hours lost to wind, and curing   --forecast FILE [--temperatures FILE] [--pour ACTIVITY --at TIME]

Exit code: 0 done, 1 the input is bad (each fault on standard error), 2 wrong usage.`;

type TableOption = 'work' | 'roster' | 'forecast' | 'plant';
const neededOf: { readonly [V in Verb]?: readonly (readonly ['FILE', TableOption])[] } = {
  people: [['FILE', 'roster']],
  noise: [
    ['FILE', 'work'],
    ['FILE', 'plant'],
  ],
  lifting: [['FILE', 'forecast']],
};

/** Options that would be passed over in silence by any other verb. */
const takersOf: readonly (readonly ['actuals' | 'calendar', readonly Verb[]])[] = [
  ['actuals', ['handback']],
  ['calendar', ['handback', 'book']],
];

function whole(text: string | undefined, option: string, fallback: number, least: number): number {
  if (text === undefined) return fallback;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least)
    throw new UsageError(`--${option} takes a whole number of at least ${least}, not "${text}"`);
  return value;
}

/** @throws {UsageError} When the words do not make a command. */
export function readArguments(words: readonly string[]): Arguments {
  const text = { type: 'string' } as const;
  const parsed = (() => {
    try {
      return parseArgs({
        args: [...words],
        allowPositionals: true,
        options: {
          windows: text,
          work: text,
          rules: text,
          resources: text,
          prices: text,
          trains: text,
          holidays: text,
          roster: text,
          forecast: text,
          temperatures: text,
          plant: text,
          site: text,
          pour: text,
          booking: text,
          actuals: text,
          decisions: text,
          calendar: text,
          zone: text,
          isolation: { type: 'string', multiple: true },
          first: text,
          seconds: text,
          seed: text,
          runs: text,
          at: text,
          window: text,
          minutes: text,
          loud: { type: 'boolean', default: false },
          json: { type: 'boolean', default: false },
        },
      });
    } catch (error) {
      throw new UsageError((error as Error).message);
    }
  })();
  const { values, positionals } = parsed;
  const [verb, ...rest] = positionals;
  if (verb === undefined) throw new UsageError('no verb given');
  if (!verbs.includes(verb as Verb)) throw new UsageError(`unknown verb "${verb}"`);
  if (rest.length > 0) throw new UsageError(`unexpected "${rest.join(' ')}"`);
  if (values.windows === undefined) throw new UsageError('--windows FILE is needed');
  const needsWork: readonly Verb[] = ['fit', 'allocate', 'handback'];
  if (needsWork.includes(verb as Verb) && values.work === undefined)
    throw new UsageError(`${verb} needs --work FILE`);
  for (const [needs, option] of neededOf[verb as Verb] ?? [])
    if (values[option] === undefined) throw new UsageError(`${verb} needs --${option} ${needs}`);
  for (const [option, takers] of takersOf)
    if (values[option] !== undefined && !takers.includes(verb as Verb))
      throw new UsageError(`${verb} takes no --${option}; it goes with ${takers.join(' and ')}`);
  if (values.pour !== undefined && values.at === undefined)
    throw new UsageError('--pour needs --at TIME');
  if (verb === 'price' && (values.window === undefined || values.minutes === undefined)) {
    throw new UsageError('price needs --window W and --minutes N');
  }
  const first = (values.first ?? 'key-dates') as Objective;
  if (!objectives.includes(first))
    throw new UsageError(`--first is one of ${objectives.join(', ')}, not "${first}"`);
  if (values.zone !== undefined && !isZone(values.zone))
    throw new UsageError(`unknown time zone "${values.zone}"; write one such as Europe/London`);
  const seconds = Number(values.seconds ?? '5');
  if (!(seconds > 0 && seconds <= 86_400))
    throw new UsageError(`--seconds takes a number above 0, not "${values.seconds}"`);
  const {
    windows,
    isolation,
    loud,
    json,
    first: _first,
    seconds: _seconds,
    seed,
    runs,
    minutes,
    ...files
  } = values;
  return {
    ...files,
    verb: verb as Verb,
    windows,
    isolation: (isolation ?? [])
      .flatMap((one) => one.split(';'))
      .map((one) => one.trim())
      .filter((one) => one !== ''),
    loud,
    json,
    first,
    seconds,
    seed: whole(seed, 'seed', 1, 0),
    runs: whole(runs, 'runs', 10_000, 1),
    ...(minutes === undefined ? {} : { minutes: whole(minutes, 'minutes', 0, 0) }),
  };
}

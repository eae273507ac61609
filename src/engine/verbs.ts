import type { Engine } from './types.js';

/** What an engine can be asked: everything but its own end. */
export type Verb = Exclude<keyof Engine, 'dispose'>;

/** A call without the way to stop it and the telling of progress, which travel by themselves. */
export type ArgumentsOf<V extends Verb> = Leading<Required<Parameters<Engine[V]>>>;

export type AnswerOf<V extends Verb> = Awaited<ReturnType<Engine[V]>>;

type Leading<P extends readonly unknown[]> = P extends [
  ...infer A,
  AbortSignal,
  (progress: never) => void,
]
  ? A
  : P extends [...infer A, AbortSignal]
    ? A
    : P;

/** How a verb travels to a worker. */
interface Travel<V extends Verb> {
  /** How many arguments come before the signal. */
  readonly args: ArgumentsOf<V>['length'];
  /** Which of them is the plan document; -1 where none is. */
  readonly document: number;
  /** A search, which gets a worker of its own, so that it never holds up an edit. */
  readonly apart: boolean | ((...args: ArgumentsOf<V>) => boolean);
}

/**
 * Every verb and how it travels. A new verb is a method of `Engine` in types.ts, a line here and its answer in
 * answers.ts: port, worker and inline engine are made from these.
 */
export const verbs: { readonly [V in Verb]: Travel<V> } = {
  recompute: { args: 1, document: 0, apart: false },
  // A preview can be given up, and a workbook may take long; the files a page opens with are small and known.
  importFiles: { args: 2, document: 1, apart: (files) => files.some((file) => file.choices) },
  exportFiles: { args: 2, document: 0, apart: true },
  exportTable: { args: 2, document: -1, apart: true },
  allocate: { args: 2, document: 0, apart: true },
  assess: { args: 2, document: 0, apart: true },
  allocateToChance: { args: 2, document: 0, apart: true },
  replan: { args: 3, document: 0, apart: true },
  shortNotice: { args: 4, document: 0, apart: true },
  handback: { args: 2, document: 0, apart: true },
  price: { args: 2, document: 0, apart: false },
  options: { args: 2, document: 0, apart: true },
  account: { args: 2, document: 0, apart: false },
  book: { args: 2, document: 0, apart: false },
  people: { args: 2, document: 0, apart: true },
  noise: { args: 2, document: 0, apart: false },
  lifting: { args: 2, document: 0, apart: false },
  compareRules: { args: 2, document: 0, apart: true },
  checkFits: { args: 2, document: 0, apart: false },
};

/** One call, with what belongs to it taken out of its arguments. */
export interface Call {
  readonly verb: Verb;
  readonly args: readonly unknown[];
  readonly signal: AbortSignal | undefined;
  readonly onProgress: ((progress: unknown) => void) | undefined;
}

/** Whether a call gets a worker of its own. */
export function goesApart({ verb, args }: Call): boolean {
  const apart = verbs[verb].apart as boolean | ((...args: readonly unknown[]) => boolean);
  return typeof apart === 'boolean' ? apart : apart(...args);
}

/** The methods of an engine out of one way to make any call. */
export function methodsBy(call: (call: Call) => Promise<unknown>): Omit<Engine, 'dispose'> {
  const methods = Object.entries(verbs).map(([name, { args: count }]) => [
    name,
    (...given: unknown[]) =>
      call({
        verb: name as Verb,
        args: given.slice(0, count),
        signal: given[count] as Call['signal'],
        onProgress: given[count + 1] as Call['onProgress'],
      }),
  ]);
  return Object.fromEntries(methods) as Omit<Engine, 'dispose'>;
}

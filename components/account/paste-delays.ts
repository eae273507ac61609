import { addMinutes, type Instant } from '../../src/calendar/index.js';
import type { Train } from '../../src/model/index.js';
import { readMinutes } from './read-entry.js';
import type { AccountStrings } from './strings.js';

export interface PastedDelays {
  /** When each train passed; null: it was cancelled. */
  readonly passed: ReadonlyMap<string, Instant | null>;
  /** Lines that could not be read, unchanged and in order. */
  readonly left: readonly string[];
  readonly problems: readonly string[];
}

/**
 * Reads pasted delays, one line per train: its name, a tab, and whole minutes or a word for cancelled. Lines with
 * minutes only apply to the trains in order, starting at `from`. A blank line is a train without a record.
 */
export function pastedDelays(
  text: string,
  trains: readonly Train[],
  from: number,
  words: AccountStrings,
): PastedDelays {
  const passed = new Map<string, Instant | null>();
  const left: string[] = [];
  const problems: string[] = [];
  const byName = new Map(trains.map((train) => [train.id.toLowerCase(), train]));
  const lines = text.replace(/(\r\n|\r|\n)$/, '').split(/\r\n|\r|\n/);
  const named = lines.some((line) => line.includes('\t'));
  lines.forEach((line, index) => {
    const cells = line.split('\t').map((item) => item.trim());
    const [name, delay] = named ? [cells[0]!, cells[1] ?? ''] : ['', cells[0]!];
    if (name === '' && delay === '') return;
    const refuse = (problem: string): void => {
      left.push(line);
      problems.push(words.lineProblem(index + 1, line.trim(), problem));
    };
    const train = named ? byName.get(name.toLowerCase()) : trains[from + index];
    if (!train) return refuse(named ? words.noTrain(name) : words.tooMany);
    if (passed.has(train.id)) return refuse(words.twiceGiven(train.id));
    if (words.cancelledWords.includes(delay.toLowerCase())) {
      passed.set(train.id, null);
      return;
    }
    const read = readMinutes(delay, words);
    if ('problem' in read) return refuse(read.problem);
    passed.set(train.id, addMinutes(train.passesAt, read.value));
  });
  return { passed, left, problems };
}

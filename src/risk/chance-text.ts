/** How a chance is said in a language. */
export interface ChanceWords {
  /** A percentage, 0 to 100, to be written with one decimal. */
  percent(value: number): string;
  over(percent: string): string;
  under(percent: string): string;
  all(runs: number): string;
  none(runs: number): string;
}

const english: ChanceWords = {
  percent: (value) => `${value.toFixed(1)} %`,
  over: (percent) => `over ${percent}`,
  under: (percent) => `under ${percent}`,
  all: (runs) => `all of ${runs} runs`,
  none: (runs) => `none of ${runs} runs`,
};

/**
 * A share of simulated runs in words: a finite number of runs shows neither certainty nor impossibility. Where all runs
 * agree, the bound is what so many can show: with 95 % confidence the share that never occurred is below 3 / runs.
 *
 * @param share 0 … 1.
 * @param runs How many runs it is a share of; absent: 3,000 and more.
 * @param words Those of another language.
 * @see the rule of three of small samples (common practice; -ln(0.05) = 2.996)
 */
export function chanceText(share: number, runs = Infinity, words = english): string {
  const { percent, over, under } = words;
  const unseen = Math.max(0.001, 3 / runs);
  if (share <= 0 || share >= 1) {
    if (unseen >= 1) return share >= 1 ? words.all(runs) : words.none(runs);
    const bound = Math.ceil(1000 * unseen - 1e-9) / 10;
    return share >= 1 ? over(percent(100 - bound)) : under(percent(bound));
  }
  if (share >= 0.9995) return over(percent(99.9));
  if (share < 0.0005) return under(percent(0.1));
  return percent(100 * share);
}

/**
 * Whether so many runs can show a chance at all: were every one of them on time, the chance would still be open below
 * 1 - 3 / runs.
 */
export const canShow = (chance: number, runs: number): boolean => runs * (1 - chance) >= 3 - 1e-9;

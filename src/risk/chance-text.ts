/**
 * A share of simulated runs in words: a finite number of runs shows neither certainty nor impossibility. Where all runs
 * agree, the bound is what so many can show: with 95 % confidence the share that never occurred is below 3 / runs.
 *
 * @param share 0 … 1.
 * @param runs How many runs it is a share of; absent: 3,000 and more.
 * @see the rule of three of small samples (common practice; -ln(0.05) = 2.996)
 */
export function chanceText(share: number, runs = Infinity): string {
  const unseen = Math.max(0.001, 3 / runs);
  if (share <= 0 || share >= 1) {
    if (unseen >= 1) return `${share >= 1 ? 'all' : 'none'} of ${runs} runs`;
    const bound = Math.ceil(1000 * unseen - 1e-9) / 10;
    return share >= 1 ? `over ${(100 - bound).toFixed(1)} %` : `under ${bound.toFixed(1)} %`;
  }
  if (share >= 0.9995) return 'over 99.9 %';
  if (share < 0.0005) return 'under 0.1 %';
  return `${(100 * share).toFixed(1)} %`;
}

/**
 * Whether so many runs can show a chance at all: were every one of them on time, the chance would still be open below
 * 1 - 3 / runs.
 */
export const canShow = (chance: number, runs: number): boolean => runs * (1 - chance) >= 3 - 1e-9;

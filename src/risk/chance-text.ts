/**
 * A share of simulated runs in words: a finite number of runs shows neither certainty nor impossibility.
 *
 * @param share 0 … 1.
 */
export function chanceText(share: number): string {
  if (share >= 0.9995) return 'over 99.9 %';
  if (share < 0.0005) return 'under 0.1 %';
  return `${(100 * share).toFixed(1)} %`;
}

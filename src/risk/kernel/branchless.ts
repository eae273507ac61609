// Of two whole numbers less than 2^31 apart, without a branch: which one it is, is chance, and a wrong guess costs more than
// all the rest.

export function later(a: number, b: number): number {
  const short = (a - b) | 0;
  return (a - (short & (short >> 31))) | 0;
}

export function sooner(a: number, b: number): number {
  const short = (a - b) | 0;
  return (b + (short & (short >> 31))) | 0;
}

/** All bits where work that starts then and lasts so long would meet a closed stretch, else 0. What takes no time meets none. */
export function meets(start: number, lasts: number, from: number, to: number): number {
  return ((start - to) & (from - start - lasts) & -lasts) >> 31;
}

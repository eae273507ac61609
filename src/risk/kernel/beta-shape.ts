/**
 * The beta-PERT distribution on 0 … 1 with its mode at `mode`: density proportional to x^(4m) (1-x)^(4(1-m)).
 *
 * Built with +, -, *, / and square roots only, which every engine rounds alike, so that a seeded simulation gives the
 * same bits everywhere; exp, log and pow are not so bound.
 * @see values 7.10 of the reference notes: alpha = 1 + 4m, beta = 1 + 4(1-m) (marked M+, formulas from memory, recomputed)
 */
export interface BetaShape {
  readonly mode: number;
  /** Cumulative probability at the panel ends, 0 first and 1 last. */
  readonly cumulative: Float64Array;
  /** Density in the panel variable `t` at panel ends and midpoints, scaled as `cumulative` is. */
  readonly density: Float64Array;
}

const PANELS = 256;
const POWER_BITS = 40;

/** x^y for 0 <= x <= 1 and 0 <= y, by repeated square roots of x: good to about 1e-12. */
export function power(x: number, y: number): number {
  if (x <= 0) return y === 0 ? 1 : 0;
  let result = 1;
  const whole = Math.floor(y);
  for (let k = 0; k < whole; k += 1) result *= x;
  let rest = y - whole;
  let root = x;
  for (let bit = 0; bit < POWER_BITS && rest > 0; bit += 1) {
    root = Math.sqrt(root);
    rest *= 2;
    if (rest >= 1) {
      result *= root;
      rest -= 1;
    }
  }
  return result;
}

/** t^2 (3 - 2t): its flat ends tame the density's infinite slope there. */
const bend = (t: number): number => t * t * (3 - 2 * t);

export function betaShape(mode: number): BetaShape {
  const density = new Float64Array(2 * PANELS + 1);
  for (let i = 0; i <= 2 * PANELS; i += 1) {
    const t = i / (2 * PANELS);
    const x = bend(t);
    density[i] = power(x, 4 * mode) * power(bend(1 - t), 4 * (1 - mode)) * 6 * t * (1 - t);
  }
  const cumulative = new Float64Array(PANELS + 1);
  for (let p = 0; p < PANELS; p += 1) {
    const area = density[2 * p]! + 4 * density[2 * p + 1]! + density[2 * p + 2]!;
    cumulative[p + 1] = cumulative[p]! + area / (6 * PANELS);
  }
  const total = cumulative[PANELS]!;
  for (let p = 0; p <= PANELS; p += 1) cumulative[p] = cumulative[p]! / total;
  for (let i = 0; i <= 2 * PANELS; i += 1) density[i] = density[i]! / total;
  return { mode, cumulative, density };
}

/** Probability in the first `part` (0 … 1) of a panel: the integral of the parabola through its three densities. */
function inPanel(shape: BetaShape, panel: number, part: number): number {
  const start = shape.density[2 * panel]!;
  const middle = shape.density[2 * panel + 1]!;
  const end = shape.density[2 * panel + 2]!;
  const slope = -3 * start + 4 * middle - end;
  const curve = 2 * start - 4 * middle + 2 * end;
  return (part * (start + part * (slope / 2 + (part * curve) / 3))) / PANELS;
}

/** P(X <= x) for x in 0 … 1. */
export function betaCumulative(shape: BetaShape, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  let low = 0;
  let high = 1;
  for (let step = 0; step < 54; step += 1) {
    const t = (low + high) / 2;
    if (bend(t) < x) low = t;
    else high = t;
  }
  const panel = Math.min(PANELS - 1, Math.floor(high * PANELS));
  return shape.cumulative[panel]! + inPanel(shape, panel, high * PANELS - panel);
}

/** The smallest x with P(X <= x) >= p, for p in 0 … 1. Never falls as p grows. */
export function betaQuantile(shape: BetaShape, p: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let panel = 0;
  for (let step = PANELS / 2; step >= 1; step /= 2) {
    if (shape.cumulative[panel + step]! < p) panel += step;
  }
  return bend((panel + partWith(shape, panel, p - shape.cumulative[panel]!)) / PANELS);
}

/** How far into a panel the wanted probability is reached: Newton's steps, halving where one would leave the bracket. */
function partWith(shape: BetaShape, panel: number, wanted: number): number {
  const start = shape.density[2 * panel]!;
  const middle = shape.density[2 * panel + 1]!;
  const end = shape.density[2 * panel + 2]!;
  const slope = -3 * start + 4 * middle - end;
  const curve = 2 * start - 4 * middle + 2 * end;
  let low = 0;
  let high = 1;
  let part = (wanted * PANELS) / (start + slope / 2 + curve / 3);
  for (let step = 0; step < 40; step += 1) {
    const miss = inPanel(shape, panel, part) - wanted;
    if (miss < 0) low = part;
    else high = part;
    const newton = part - (miss * PANELS) / (start + part * (slope + part * curve));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const moved = Math.abs(next - part);
    part = next;
    if (moved < 1e-13) break;
  }
  return part;
}

import { appendFileSync } from 'node:fs';
import { loadavg } from 'node:os';

/** One figure of ours beside a peer's of the same run. */
export interface Figure {
  /** Which bench it is from: `recompute`. */
  readonly bench: string;
  /** What was done, and to how much of it. */
  readonly what: string;
  readonly ours: number;
  readonly peer: number;
  /** Who the peer is, with its version, or what stands for it: `linear growth`. */
  readonly against: string;
  /** Of both figures: `ms`, `MB`; empty for a bare number. */
  readonly unit: string;
  /** What is aimed at, where something is; told, not enforced. */
  readonly aim?: string;
}

/**
 * Prints a figure, and adds it to the file that `BENCH_FIGURES` names, if any, for a table of all benches.
 * The ratio is ours over the peer's: below 1 ours is quicker, or smaller.
 */
export function tell(figure: Figure): void {
  const { bench, what, ours, peer, against, unit, aim } = figure;
  console.log(
    `${bench}: ${what}: ours ${short(ours)} ${unit}, ${against} ${short(peer)} ${unit}, ratio ${short(ours / peer)}` +
      (aim ? ` (aim ${aim})` : ''),
  );
  const file = process.env['BENCH_FIGURES'];
  if (file) appendFileSync(file, `${JSON.stringify(figure)}\n`);
}

/** Three significant digits, none of them after the point from 100 up. */
export function short(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

/** The value below which a share of the values lies, 0 to 1. Of no values `NaN`. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/**
 * Milliseconds from some fixed moment: by the clock on the wall or, with `BENCH_CLOCK=cpu`, of processor time by all
 * threads of this process. On a machine that others use too, that is an upper limit of the time it takes when alone.
 */
export function now(): number {
  if (!byProcessor) return performance.now();
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
const byProcessor = process.env['BENCH_CLOCK'] === 'cpu';

/** Milliseconds that `work` takes, with what it gave. Memory is swept before, so that no one pays for another's waste. */
export function timed<T>(work: () => T): { readonly ms: number; readonly value: T } {
  sweep();
  const before = now();
  const value = work();
  return { ms: now() - before, value };
}

/** Sweeps the memory, where Node was started with `--expose-gc`. */
export function sweep(): void {
  (globalThis as { gc?: () => void }).gc?.();
}

/** `by the wall clock, load 0.52`: of the last minute, for a machine shared with others. */
export function conditions(): string {
  return `${byProcessor ? 'processor time' : 'by the wall clock'}, load ${loadavg()[0]!.toFixed(2)}`;
}

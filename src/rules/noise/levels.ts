// Sound levels in decibels, A-weighted. Nothing is rounded here: a total is compared with a limit unrounded.

export type Ground = 'hard' | 'soft';

/**
 * The level of several sources heard together.
 * @returns -Infinity for none.
 * @example combinedDb([70, 70]).toFixed(2) // '73.01'
 * @see 10 log10 of the sum of 10^(L/10): energy sum, from memory.
 */
export function combinedDb(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/**
 * Change in dB for working only part of the time; 0 or below.
 * @throws {RangeError} When the share is not above 0 and at most 100.
 * @see 10 log10(P / 100): a road agency's construction noise page, read.
 */
export function onTimeDb(percent: number): number {
  if (!(percent > 0 && percent <= 100))
    throw new RangeError(`on-time is above 0 and at most 100 per cent, not ${percent}`);
  return 10 * Math.log10(percent / 100);
}

/**
 * Change in dB from 10 m to another distance.
 * @throws {RangeError} When the distance is not above 0, or the ground is soft and it is below 25 m.
 * @see BS 5228-1 F.2: hard 20 log10(R/10), soft 25 log10(R/10) - 2 from 25 m on; from memory.
 */
export function distanceDb(metres: number, ground: Ground): number {
  if (!(metres > 0 && metres < Infinity)) throw new RangeError(`no distance: ${metres} m`);
  if (ground === 'hard') return -20 * Math.log10(metres / 10);
  if (metres < 25) throw new RangeError(`soft ground counts from 25 m, not ${metres} m`);
  return -(25 * Math.log10(metres / 10) - 2);
}

/** Sound power level of a source from its level at a distance, over hard ground: Lw = Lp + 20 log10(r) + 8. */
export function powerLevel(levelDb: number, metres = 10): number {
  return levelDb + 20 * Math.log10(metres) + 8;
}

/** Level at a distance from a sound power level, over hard ground. */
export function levelOfPower(powerDb: number, metres = 10): number {
  return powerDb - 20 * Math.log10(metres) - 8;
}

/**
 * Level beside a haul road of steady traffic.
 * @see BS 5228-1 F.2.5: LWA - 33 + 10 log10 Q - 10 log10 V - 10 log10 d; from memory, fair.
 */
export function haulRoadDb(road: {
  powerDb: number;
  vehiclesPerHour: number;
  kilometresPerHour: number;
  metres: number;
}): number {
  const { powerDb, vehiclesPerHour, kilometresPerHour, metres } = road;
  return (
    powerDb -
    33 +
    10 * (Math.log10(vehiclesPerHour) - Math.log10(kilometresPerHour) - Math.log10(metres))
  );
}

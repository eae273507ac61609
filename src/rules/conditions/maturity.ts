// How fast concrete gains strength at a temperature, by the formulas in use. The formula is a setting: they disagree,
// most of all in the cold, and none replaces a strength test or the curve of the mix.

import type { MaturityModel } from '../../model/index.js';

/** ASTM C1074; Q as a default from memory. */
export const constantEnergy: MaturityModel = {
  model: 'constant energy',
  qKelvin: 5000,
  referenceC: 20,
};
/** Danish TI-B 103, 1996: form read; constants from memory. */
export const energyByTemperature: MaturityModel = {
  model: 'energy by temperature',
  bKj: 33.5,
  cKj: 1.47,
};
/** Sadgrove, CIRIA 136: from memory, fair. */
export const squareLaw: MaturityModel = { model: 'square law' };

/** 0 °C as the formulas round it. */
const zeroCelsius = 273;
/** Gas constant in kJ/(mol K). */
const gas = 8.314e-3;

/**
 * Maturity gained in an hour at a temperature: °C hours for the temperature-time factor, otherwise hours at the
 * reference temperature. Never below 0.
 */
export function maturityRate(model: MaturityModel, celsius: number): number {
  const kelvin = celsius + zeroCelsius;
  switch (model.model) {
    case 'temperature-time':
      return Math.max(0, celsius - model.datumC);
    case 'constant energy':
      return Math.exp(-model.qKelvin * (1 / kelvin - 1 / (model.referenceC + zeroCelsius)));
    case 'energy by temperature': {
      const energy = model.bKj + model.cKj * Math.max(0, 20 - celsius);
      return Math.exp((energy / gas) * (1 / (20 + zeroCelsius) - 1 / kelvin));
    }
    case 'square law':
      // The parabola rises again below -16 °C; concrete does not.
      return (Math.max(0, celsius + 16) / 36) ** 2;
  }
}

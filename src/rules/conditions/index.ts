export { curingMinutes, earliestReady, maturityBetween, type Curing } from './curing.js';
export type { MaturityModel, WeatherRow } from '../../model/index.js';
export { evenRows, weatherOf, type Weather } from './forecast.js';
export {
  liftOf,
  lifts,
  liftingClosedName,
  liftingClosedTime,
  stretchesOf,
} from './lifting-time.js';
export { gustOf, liftingHours, type Lift, type LiftingHours } from './lifting.js';
export { constantEnergy, energyByTemperature, maturityRate, squareLaw } from './maturity.js';
export { maturityCurve, type MaturityCurve } from './maturity-curve.js';
export {
  chartAreaPerTonne,
  chartInForce,
  gustAtHeight,
  reducedLimit,
  type ChartInForce,
  type Load,
  type WindChart,
} from './wind.js';

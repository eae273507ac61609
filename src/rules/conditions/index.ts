export { curingMinutes, earliestReady, maturityBetween, type Curing } from './curing.js';
export { evenRows, weatherOf, type Weather, type WeatherRow } from './forecast.js';
export { gustOf, liftingHours, type Lift, type LiftingHours } from './lifting.js';
export {
  constantEnergy,
  energyByTemperature,
  maturityRate,
  squareLaw,
  type MaturityModel,
} from './maturity.js';
export {
  chartAreaPerTonne,
  chartInForce,
  gustAtHeight,
  reducedLimit,
  type ChartInForce,
  type Load,
  type WindChart,
} from './wind.js';

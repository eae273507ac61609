export {
  activityNoise,
  isNoiseAssessed,
  noiseClosedName,
  noiseClosedTime,
  type ActivityNoise,
  type DwellingNoise,
} from './activity-noise.js';
export {
  ambientCategory,
  ambientVerdict,
  type AmbientCategory,
  type AmbientVerdict,
  type Thresholds,
} from './ambient-category.js';
export {
  combinedDb,
  distanceDb,
  haulRoadDb,
  levelOfPower,
  onTimeDb,
  powerLevel,
  type Ground,
} from './levels.js';
export { loudHours, type NoiseVerdict, type PeriodVerdict } from './loud-hours.js';
export { noiseLimitsSchema, plantLevelSchema, type NoiseLimits } from '../../model/index.js';
export {
  facadeDb,
  predict,
  screeningOnly,
  type NoiseSource,
  type Prediction,
  type SourceLevel,
} from './prediction.js';
export { consentDates, type ConsentDates } from './prior-consent.js';

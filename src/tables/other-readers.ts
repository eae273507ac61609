// What reads the tables beside windows and work. A page that shows windows loads it with the first of these tables.
import { plantFrom } from './kinds/plant.js';
import { resourcesFrom } from './kinds/resources.js';
import { rosterFrom } from './kinds/roster.js';
import { trainsFrom } from './kinds/trains.js';
import { forecastFrom, temperaturesFrom } from './kinds/weather.js';

export const otherReaders = {
  resources: resourcesFrom,
  trains: trainsFrom,
  roster: rosterFrom,
  temperatures: temperaturesFrom,
  forecast: forecastFrom,
  plant: plantFrom,
};

export type OtherReaders = typeof otherReaders;

import type { Instant } from '../calendar/index.js';
import type { Sourced } from './sourced.js';

/** One turn of duty given to one crew, or to one person: whoever the limits are to be held to. */
export interface Assignment {
  readonly id: string;
  readonly crew: string;
  readonly start: Instant;
  readonly end: Instant;
  /** Travelling each way, before `start` and after `end`. */
  readonly travelMinutes: number;
  /** The window it mans, where the roster says. */
  readonly window?: string;
  /** What it needs, and so what whoever works it holds, where the roster says. */
  readonly competence?: readonly string[];
}

/** One row of a forecast or a record. It holds until the next row. */
export interface WeatherRow {
  readonly at: Instant;
  /** Mean wind at 10 m, m/s. */
  readonly windMps?: number;
  /** Gust at 10 m, m/s. */
  readonly gustMps?: number;
  readonly temperatureC?: number;
  readonly lightning?: boolean;
}

/** A row of a list of plant: LAeq at 10 m, where it was read, and how the plan uses it. */
export interface PlantNoise extends Sourced {
  readonly plant: string;
  readonly levelDb: number;
  /** The resource that brings it; absent: the resource of its own name. */
  readonly resource?: string;
  /** Machines for one of the resource; 1 when absent. */
  readonly count?: number;
  /** Share of the time at work, in per cent; absent: as the site says. */
  readonly onTimePercent?: number;
}

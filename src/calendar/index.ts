export { addMinutes, DAY, HOUR, MINUTE, minutesBetween, type Instant } from './instant.js';
export {
  contains,
  intersectionOf,
  interval,
  lengthMinutes,
  overlaps,
  type Interval,
} from './interval.js';
export {
  covers,
  intersect,
  subtract,
  totalMinutes,
  unionOf,
  type IntervalSet,
} from './interval-set.js';
export {
  clockChanges,
  instantOf,
  isLocalTime,
  isoText,
  isZone,
  localText,
  localTimeOf,
  offsetMinutes,
  readings,
  startOfLocalDay,
  weekdayOf,
  zoneName,
  type Disambiguation,
  type LocalTime,
  type Reading,
} from './local-time.js';
export { clockOfMinute, minuteOfClock } from './clock-text.js';
export { clockWords, dueWords, offsetWhereTwice } from './clock-words.js';
export { durationText } from './duration.js';
export { daysLater } from './days-later.js';
export { dailyBands, type DailyBand } from './bands.js';
export {
  dateOf,
  dayAt,
  dayFromText,
  dayNumber,
  dayText,
  momentOn,
  startOfDay,
  weekdayOfDay,
  type DayNumber,
  type LocalDate,
} from './local-date.js';
export {
  railwayWeek,
  weekOneRules,
  type RailwayWeek,
  type RailwayWeekSettings,
  type WeekOneRule,
} from './railway-week.js';
export {
  periodsTouched,
  periodText,
  railwayPeriod,
  railwayPeriods,
  type RailwayPeriod,
} from './railway-period.js';
export {
  bankHolidaysEnglandAndWales,
  easterDay,
  holidayAt,
  holidayTimes,
  type Holiday,
} from './holidays.js';

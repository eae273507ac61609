// 100,000 local times to instants beside luxon and temporal-polyfill: `node bench/run.mjs calendar/convert`. After
// the rounds every answer is held against both; a difference fails the bench.
import { readFileSync } from 'node:fs';
import { DateTime } from 'luxon';
import { Temporal } from 'temporal-polyfill';
import { readings, type Reading } from '../../src/calendar/index.js';
import { conditions, median, tell, timed } from '../shared/figures.js';
import { localTimes, type Asked } from './local-times.js';

const COUNT = 100_000;
const TURNS = 7;

const versionOf = (name: string): string =>
  `${name} ${(JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8')) as { version: string }).version}`;

const ours = ({ zone, ...local }: Asked): Reading => readings(local, zone);
const byLuxon = ({ zone, ...local }: Asked): number =>
  DateTime.fromObject(local, { zone }).toMillis();
const byTemporal = (asked: Asked, disambiguation: 'earlier' | 'later'): number => {
  const { zone: timeZone, ...local } = asked;
  return Temporal.ZonedDateTime.from({ ...local, timeZone }, { disambiguation }).epochMilliseconds;
};

const list = localTimes(COUNT);
console.log(`${COUNT} local times, ${conditions()}`);
// The first round of each is cold: nothing is compiled, no offset is known. It is told apart from the later ones.
const runs: { name: string; convert: (asked: Asked) => unknown; times: number[] }[] = [
  { name: versionOf('luxon'), convert: byLuxon, times: [] },
  {
    name: versionOf('temporal-polyfill'),
    convert: (asked) => byTemporal(asked, 'earlier'),
    times: [],
  },
  { name: 'ours', convert: ours, times: [] },
];
let seen = 0;
for (let turn = 0; turn <= TURNS; turn += 1)
  for (const { convert, times } of runs)
    times.push(timed(() => list.forEach((asked) => (seen += convert(asked) ? 1 : 0))).ms);
checkSame();

const own = runs.at(-1)!.times;
for (const { name, times } of runs.slice(0, -1)) {
  const figure = { bench: 'calendar', against: name, unit: 'ms' };
  const what = `${COUNT.toLocaleString('en')} local times to instants`;
  tell({ ...figure, what: `${what}, first round`, ours: own[0]!, peer: times[0]! });
  const [mine, theirs] = [median(own.slice(1)), median(times.slice(1))];
  tell({ ...figure, what: `${what}, median of ${TURNS} more`, ours: mine, peer: theirs });
}
console.log(conditions(), `(${seen})`);

/**
 * A time shown once: all three agree. Shown twice: ours names the polyfill's earlier and later moment, and luxon's is one
 * of them. Never shown: the polyfill moves it back and forth over the change that ours names.
 */
function checkSame(): void {
  const kinds = { one: 0, two: 0, none: 0 };
  for (const asked of list) {
    const reading = ours(asked);
    kinds[reading.kind] += 1;
    const [earlier, later] = [byTemporal(asked, 'earlier'), byTemporal(asked, 'later')];
    const luxon = byLuxon(asked);
    const same =
      reading.kind === 'one'
        ? reading.at === earlier && earlier === later && luxon === earlier
        : reading.kind === 'two'
          ? reading.earlier === earlier &&
            reading.later === later &&
            (luxon === earlier || luxon === later)
          : earlier < reading.gap && reading.gap <= later;
    if (!same)
      throw new Error(
        `${JSON.stringify(asked)}: ours ${JSON.stringify(reading)}, earlier ${earlier}, later ${later}, luxon ${luxon}`,
      );
  }
  if (kinds.two === 0 || kinds.none === 0) throw new Error('no clock change was met');
  console.log(
    `  all agree: ${kinds.one} shown once, ${kinds.two} twice, ${kinds.none} never shown`,
  );
}

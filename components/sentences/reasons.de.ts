import type { ReasonSentences } from '../../src/engine/index.js';
import { clockText } from '../shared/format.js';
import { and, due, form, moment, names, number, or, time } from './parts.de.js';

type Given<K extends keyof ReasonSentences> = Parameters<ReasonSentences[K]>[0];

// From memory, to be read by a native speaker of the trade.

const cured = (others: boolean): string => (others ? 'Sind die übrigen Gründe behoben: ' : '');
const likewise = (more = 0): string => (more > 0 ? `; ebenso in ${number(more)} weiteren` : '');
const metres = (size: number): string => `${number(Math.ceil(size * 10 - 1e-6) / 10)} m`;
const is = (all: readonly string[]): string => form(all.length, 'ist', 'sind');
const needs = (all: readonly string[]): string => form(all.length, 'braucht', 'brauchen');
const inTimeOf = (window: string | null): string =>
  window === null ? 'zu keiner Zeit' : `in der nutzbaren Zeit von ${window}`;
const most = (proven: boolean): string => (proven ? '' : 'höchstens ');
const dates = (all: Given<'not-sooner'>['dates'], words: typeof moment): string =>
  all.map((date) => `${date.activity} ${words(date)}`).join('; ');
const unmade = ({ openers, makers }: Given<'block-in-no-window'>): string =>
  openers.length > 0
    ? `${and(openers)} ${form(openers.length, 'kann', 'können')} nicht wieder befahrbar gemacht werden`
    : `${and(makers)}, womit früher Geöffnetes befahrbar wird, ${form(makers.length, 'kann', 'können')} nicht ganz fertig werden`;
const tried = (some: { readonly some: number; readonly of: number } | undefined): string =>
  some ? ` (versucht in den ${some.some} von ${some.of} Sperrpausen mit dem meisten Platz)` : '';

export const reasons: ReasonSentences = {
  withdrawn: ({ window, more }) =>
    `${window} ist zurückgezogen und nimmt keine Arbeit auf${likewise(more)}`,
  'fixed-elsewhere': ({ activities, fixed, more }) =>
    `${names(activities)} ${is(activities)} in der Planung auf ${fixed} festgelegt${likewise(more)}`,
  'lines-not-blocked': ({ activities, open, window, blocked, more }) =>
    `${names(activities)} ${needs(activities)} eine Sperrung von ${and(open)}; ${window} sperrt ${blocked.join(', ')}${likewise(more)}`,
  'outside-extent': ({ activities, below, above, window, from, to, more }) => {
    const reach = [
      ...(below > 0 ? [`${metres(below)} davor`] : []),
      ...(above > 0 ? [`${metres(above)} dahinter`] : []),
    ];
    return `${names(activities)} ${form(activities.length, 'reicht', 'reichen')} über ${window} hinaus: ${and(reach)} (${metres(from)} bis ${metres(to)})${likewise(more)}`;
  },
  'isolation-not-booked': ({ activities, sections, window, more }) =>
    `${names(activities)} ${needs(activities)} ${and(sections)} freigeschaltet; ${window} bucht ${form(sections.length, 'das', 'sie')} nicht${likewise(more)}`,
  'nothing-left': ({ package: name }) => `von ${name} ist nichts mehr zu tun`,
  'not-worked-out': ({ package: name, window }) =>
    `nicht berechnet: ob in ${window} Zeit für ${name} ist, denn andere Paare haben alle Schritte gebraucht; mit weniger Sperrpausen oder Paketen danach fragen`,
  'wait-in-a-ring': ({ activities }) => `${activities.join(', ')} warten im Kreis aufeinander`,
  'longer-than-a-shift': ({ activity, needed, longest, changeover }) =>
    `${activity} braucht ${time(needed)} am Stück; eine Schicht dauert längstens ${time(longest)}, und die Übergabe nimmt deren letzte ${time(changeover)}: Keine Sperrpause nimmt es auf, wie lang sie auch ist`,
  'no-time-together': ({ window, proven, upTo, noLaterEnd }) => {
    const now = proven
      ? `keine Zeit in ${window} nimmt alles zusammen auf`
      : `kein Weg wurde gefunden, alles in ${window} zu tun`;
    if (upTo === null) return now;
    return noLaterEnd
      ? `${now}, auch kein bis zu ${time(upTo)} späteres Ende`
      : `${now}, auch keiner mit einem bis zu ${time(upTo)} späteren Ende`;
  },
  'more-resource-would-fit': ({ resources, each, window, others }) =>
    `zur rechten Zeit ist in ${window} nicht genug ${(each ? and : or)(resources)} da; ${cured(others)}mit mehr ${each && resources.length > 1 ? 'von jedem' : 'davon'} würde es passen`,
  'with-later-end': ({ minutes, proven, why }) =>
    `mit einem um ${time(minutes)} späteren Ende${proven ? '' : ', soweit gesucht wurde'}: ${why.text}`,
  'side-by-side-would-fit': ({ activities, window, others }) =>
    `${activities.join(', ')} ${form(activities.length, 'braucht', 'brauchen')} den Ort allein; ${cured(others)}neben anderer Arbeit würde es in ${window} passen`,
  'fits-but-late': ({ window, dates: all, others }) =>
    `${cured(others)}es passt in ${window}, aber nicht bis zum Ecktermin (${dates(all, due)})`,
  'sooner-would-fit': ({ dates: all, others }) =>
    `${cured(others)}es würde passen, wenn es früher beginnen dürfte (nicht vor: ${dates(all, moment)})`,
  'no-usable-stretch': ({ activity, needed, unit, window, longest, breaks }) =>
    `${activity} braucht ${time(needed)} ${unit ? 'für eine Einheit mit Einrichten und Sichern' : 'am Stück'}; das längste nutzbare Stück von ${window} ist ${time(longest)}${breaks.length > 0 ? `, unterbrochen durch ${and(breaks)}` : ''}`,
  'resource-not-there': ({ activities, resource, window }) =>
    `${names(activities)} ${needs(activities)} ${resource}; davon ist ${window === null ? 'zu keiner Zeit etwas da' : `${inTimeOf(window)} nichts da`}`,
  'resource-short': ({ activities, resource, amount, most: there, window }) =>
    `${names(activities)} ${needs(activities)} ${number(amount)} ${resource}; ${window === null ? 'zu jeder Zeit' : inTimeOf(window)} ${form(there, 'ist', 'sind')} höchstens ${number(there)} da`,
  'curing-not-known': ({ activity, pour }) =>
    `${activity} wartet, bis ${pour} ausgehärtet ist, und die eingegebenen Temperaturen enden davor`,
  'curing-too-late': ({ activity, pour, ready, window }) =>
    `${activity} wartet, bis ${pour} ausgehärtet ist: nicht vor ${moment(ready)}, zu spät für ${window}`,
  'may-not-begin-before': ({ activity, from, late, window }) =>
    `${activity} darf nicht vor ${moment(from)} beginnen, ${time(late)} zu spät für ${window}`,
  'after-its-key-date': ({ activity, late, due: at }) =>
    `${activity} würde frühestens ${time(late)} nach seinem Ecktermin fertig (${due(at)})`,
  'not-shown': ({ window, count }) =>
    `nicht gezeigt, dass es in ${window} passt: Für die ${number(count)} Vorgänge wurde kein Weg gefunden, rechtzeitig fertig zu werden, aber nicht jede Reihenfolge wurde angesehen`,
  'window-too-short': ({ window }) => `${window} ist dafür zu kurz`,
  'not-by-key-date': ({ dates: all }) =>
    `es würde nicht bis zum Ecktermin fertig (${dates(all, due)})`,
  'not-sooner': ({ dates: all }) =>
    `es könnte nicht früher beginnen (nicht vor: ${dates(all, moment)})`,
  'alone-leaves-little': ({ window }) =>
    `Arbeit, die ihren Ort allein braucht, lässt in ${window} zu wenig Zeit`,
  'resource-at-the-time': ({ resource, window }) =>
    `zur rechten Zeit ist in ${window} nicht genug ${resource} da`,
  'too-short': ({ minutes, proven, others, end, otherDay, leave, bars, window }) => {
    const cures = [
      `das Ende auf ${otherDay ? moment(end) : clockText(end.at, end.zone)} rückt`,
      ...leave.map(
        ({ activity, out, of }) =>
          `${number(out)} von ${number(of)} Einheiten entfallen (${activity})`,
      ),
    ].join(' oder wenn ');
    const barred = bars.map(
      (bar) =>
        `; „${bar.rule}“ sperrt ${names(bar.activities)} für ${bar.activities.length > 1 ? 'bis zu ' : ''}${time(bar.minutes)} von ${window}`,
    );
    return `es fehlen ${most(proven)}${time(minutes)}; ${cured(others)}passt, wenn ${cures}${barred.join('')}`;
  },
  'not-made-good': ({ window, minutes, proven, ...block }) =>
    `${unmade(block)} in ${window}${minutes === null ? '' : `: es fehlen ${most(proven)}${time(minutes)}`}`,
  'stopped-too-soon': () =>
    'die Suche wurde zu früh beendet, um einen Platz zu finden oder zu sagen, warum es keinen gibt',
  'part-placed': ({ left, of }) =>
    `${number(left)} von ${number(of)} Einheiten ${form(left, 'findet', 'finden')} keinen Platz`,
  'no-room-before': () =>
    'Arbeit, die an ihrem Platz bleibt, wartet darauf, und davor ist kein Platz',
  'waits-for-itself': ({ activity }) =>
    `${activity} wartet über seine Verknüpfungen auf sich selbst`,
  'waits-for': ({ activity }) => `wartet auf ${activity}, das nicht ganz untergebracht ist`,
  'no-usable-time': ({ activity }) => `keine Sperrpause hat nutzbare Zeit für ${activity}`,
  'waits-to-cure': ({ pour }) =>
    `wartet, bis ${pour} ausgehärtet ist, und die eingegebenen Temperaturen enden davor`,
  'longest-stretch': ({ needed, longest }) =>
    `braucht ${time(needed)} am Stück; das längste nutzbare Stück ist ${time(longest)}`,
  'later-end': ({ window, minutes }) =>
    `passt, wenn das Ende von ${window} um ${time(minutes)} später liegt`,
  'no-room': () => 'andere Arbeit belegt alle Zeit, die reichen würde',
  'room-left': ({ activities, window }) =>
    `wie der Plan steht, ist ${window === null ? 'außerhalb der Sperrpausen' : `in ${window}`} Platz für ${and(activities)}, und der Plan nutzt ihn nicht`,
  'no-window': () => 'der Plan hat keine Sperrpausen',
  'no-later-window': () => 'keine Sperrpause des Plans beginnt später',
  'needs-of-resource': ({ amount, resource, most: there }) =>
    `braucht ${number(amount)} ${resource}; wenn es genutzt werden könnte, ${form(there, 'ist', 'sind')} höchstens ${number(there)} da`,
  'no-time-long-enough': () => 'keine Zeit, die übrig ist, ist lang genug',
  'other-work-has-it': () => 'andere Arbeit hat, was es braucht',
  'too-little-after': () => 'worauf es wartet, lässt danach zu wenig Zeit',
  'not-begin-sooner': () => 'es darf nicht früher beginnen',
  'work-waits-for-it': () => 'Arbeit, die an ihrem Platz bleibt, wartet darauf',
  'place-alone': ({ place }) => `${place} ist belegt: Dort wird allein gearbeitet`,
  'not-enough-when-used': ({ resource }) =>
    `von ${resource} ist nicht genug da, wenn es genutzt werden könnte`,
  'block-not-asked': ({ asked, ...block }) =>
    `${unmade(block)}, in keiner Sperrpause, wie sie steht; wie viel fehlt, wurde nur für ${number(asked)} andere Gruppen berechnet`,
  'block-in-no-window': (block) => `${unmade(block)}: keine Sperrpause nimmt alles auf`,
  'block-no-end': ({ window, tried: some, ...block }) =>
    `${unmade(block)} in ${window}: kein späteres Ende wurde gefunden, das reicht${tried(some)}`,
  'block-short': ({ window, minutes, tried: some, ...block }) =>
    `${unmade(block)} in ${window}: es fehlen ${time(minutes)}${tried(some)}`,
  'kept-in-place': ({ window }) =>
    `bleibt ${window === null ? 'an seinem Platz' : `in ${window}`} festgehalten und kann dort nicht bleiben`,
};

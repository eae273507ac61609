import type { FaultSentences } from '../../src/engine/index.js';
import { and, decimal, form, number } from './parts.de.js';

// What the independent check finds. From memory, to be read by a native speaker of the trade.

const aims: Readonly<Record<string, string>> = {
  'key-dates': 'Ecktermine',
  margins: 'Reserven',
  finish: 'Ende',
  'fewest-windows': 'Zahl der Sperrpausen',
};
const aimText = (aim: string): string => aims[aim] ?? aim;
const pair = ({ activity, other }: { readonly activity: string; readonly other: string }): string =>
  and([activity, other]);
const better = 'die Prüfung hat einen besseren Plan gefunden';

export const faults: FaultSentences = {
  'no-such-activity': ({ activity }) => `der Plan hat keinen Vorgang ${activity}`,
  'no-such-window': ({ window }) => `der Plan hat keine Sperrpause ${window}`,
  'placed-with-none-left': ({ activity }) =>
    `${activity} hat einen Platz, obwohl nichts davon übrig ist`,
  'placed-more-than-once': ({ activity }) => `${activity} hat mehr als einen Platz`,
  'two-pieces-at-once': ({ activity }) => `${activity} hat zwei Stücke zur gleichen Zeit`,
  'piece-of-units': ({ activity, units }) =>
    `${activity} hat ein Stück mit ${number(units)} Einheiten`,
  'minutes-given': ({ activity, minutes, needed }) =>
    `${activity} bekommt ${number(minutes)} min und braucht ${number(needed)}`,
  'units-given': ({ activity, units, left }) =>
    `${activity} bekommt ${number(units)} ${form(units, 'Einheit', 'Einheiten')}, und ${number(left)} ${form(left, 'ist', 'sind')} übrig`,

  'begins-before-it-may': ({ activity }) => `${activity} beginnt, bevor es beginnen darf`,
  'outside-in-window': ({ activity }) =>
    `${activity} ist Arbeit außerhalb und braucht keine Sperrpause`,
  'inside-without-window': ({ activity }) =>
    `${activity} ist Arbeit innerhalb und hat keine Sperrpause`,
  'in-unknown-window': ({ activity, window }) =>
    `${activity} liegt in ${window}: Diese Sperrpause hat der Plan nicht`,
  'in-withdrawn-window': ({ activity, window }) =>
    `${activity} liegt in ${window}, und diese Sperrpause ist zurückgezogen`,
  'fixed-in': ({ activity, window }) => `${activity} ist in ${window} festgelegt`,
  'line-stays-open': ({ activity, window, line }) =>
    `${activity} braucht Gleis ${line}, das in ${window} nicht gesperrt ist`,
  'extent-outside': ({ activity, window }) => `${activity} reicht über ${window} hinaus`,
  'section-live': ({ activity, window, section }) =>
    `${activity} braucht ${section} freigeschaltet, und ${window} hat das nicht gebucht`,
  'not-inside-window': ({ activity, window }) => `${activity} liegt nicht ganz in ${window}`,
  'not-usable-time': ({ activity, window }) =>
    `${activity} liegt in Zeit von ${window}, die nicht nutzbar ist`,
  'goes-on-in': ({ activity, why }, say) =>
    `${activity} läuft in nicht nutzbarer Zeit: ${say(why)}`,
  'the-lead-in': () => 'Vorlauf',
  'time-not-isolated': () => 'nicht freigeschaltet',
  'the-lead-out': () => 'Nachlauf',
  'the-required-margin': () => 'verlangte Rückgabereserve',
  'a-shift-changeover': () => 'Schichtübergabe',
  'the-curfew': ({ name }) => `Arbeitsruhe „${name}“`,
  'closed-time': ({ rule }, say) => `gesperrte Zeit: ${say(rule)}`,

  'begins-before-link': ({ activity, from, other, minutes }) =>
    `${activity} beginnt vor ${from === 'start' ? 'dem Beginn' : 'dem Ende'} von ${other} und ${number(minutes)} min danach`,
  'begins-before-cured': ({ activity, pour, why }, say) =>
    `${activity} beginnt, bevor ${pour} ausgehärtet ist: ${say(why)}`,
  'curing-not-in-plan': () => 'der Plan hat keine Angaben zum Beton',
  'curing-temperature-unknown': () => 'für einen Teil der Zeit ist keine Temperatur bekannt',
  'curing-reached': ({ reached, wanted }) =>
    `${decimal(reached)} von ${decimal(wanted)} sind erreicht`,
  'resource-overused': ({ activity, used, resource, there }) =>
    `${activity} und was daneben läuft brauchen ${number(used)} von ${resource}, und ${number(there)} ${form(there, 'ist', 'sind')} da`,
  'must-be-alone': ({ activity, other }) =>
    `${activity} muss an seinem Ort allein sein, und ${other} läuft dort zur gleichen Zeit`,
  'made-good-too-soon': ({ activity, opened }) =>
    `${activity} macht das Gleis nach ${opened} wieder befahrbar und beginnt, bevor ${opened} fertig ist`,
  'line-not-made-good': ({ activity, window, member, inPart }) =>
    `${activity} wird ${window === null ? 'in keiner Sperrpause' : `in ${window}`} fertig, und ${member}, ohne das das Gleis nicht befahrbar ist, ${inPart ? 'hat nicht ganz einen Platz' : 'liegt nicht ganz in dieser Sperrpause'}`,

  'listed-though-unknown': ({ activity }) =>
    `${activity} ist als nicht geplant aufgeführt, und der Plan hat es nicht`,
  'listed-though-placed': ({ activity }) =>
    `${activity} ist als nicht geplant aufgeführt und hat doch einen Platz`,
  'listed-twice': ({ activity }) => `${activity} ist zweimal als nicht geplant aufgeführt`,
  'listed-without-reason': ({ activity }) =>
    `${activity} ist ohne Grund als nicht geplant aufgeführt`,
  'neither-placed-nor-listed': ({ activity, units }) =>
    `${units === null ? activity : `${number(units)} ${form(units, 'Einheit', 'Einheiten')} von ${activity}`} ${units === null || units === 1 ? 'hat' : 'haben'} keinen Platz und ${units === null || units === 1 ? 'ist' : 'sind'} auch nicht als übrig aufgeführt`,
  'nothing-of-package-left': ({ package: pack }) => `von ${pack} ist nichts mehr zu planen`,
  'not-all-placed': ({ activity }) => `${activity} hat nicht ganz einen Platz`,
  'finished-after-key-date': ({ activity }) => `${activity} endet nach seinem Ecktermin`,
  'still-fits': ({ package: pack, window }) =>
    `${pack} soll nicht mehr in ${window} passen, verletzt dort aber, wie zuvor eingeplant, keine Regel`,
  'minutes-left-stated': ({ stated, window, package: pack, left }) =>
    `als übrig in ${window} nach ${pack} ${stated === null ? 'sind keine Minuten' : `sind ${number(stated)} min`} genannt, es sind aber ${number(left)}`,

  'finish-not-last-end': () => 'das genannte Ende ist nicht das Ende des letzten Stücks',
  'windows-stated': ({ stated, used }) =>
    `${number(stated)} Sperrpausen sind als genutzt genannt, es sind aber ${number(used)}`,
  'all-can-be-placed': () => `${better}: alle Arbeit kann einen Platz bekommen`,
  'better-plan-found': ({ aim, theirs, stated }) =>
    `${better}: ${aimText(aim)} kann ${number(theirs)} sein, wo ${number(stated)} genannt ist`,
  'values-told': ({ names }) => `die genannten Werte sind ${and(names.map(aimText))}`,
  'value-stated': ({ aim, stated, value }) =>
    `${aimText(aim)} ist mit ${number(stated)} angegeben, ist aber ${number(value)}`,
  'first-value-two-ways': () => 'der erste Wert ist auf zwei Weisen angegeben',
  'words-not-values': ({ text }) => `„${text}“ ist nicht, was die Werte sagen`,
  'bound-above-value': ({ aim, bound, value }) =>
    `${aimText(aim)}: die Schranke ${number(bound)} liegt über dem Wert ${number(value)}`,
  'proven-but-better': ({ aim, by }) =>
    `${aimText(aim)} ist als bewiesen angegeben, kann aber um ${number(by)} besser sein`,
  'bound-proves': ({ aim }) =>
    `${aimText(aim)} hat eine Schranke, die es beweist, ist aber nicht als bewiesen angegeben`,

  'key-date-missing': ({ package: pack }) =>
    `der Ecktermin von ${pack} fehlt oder hat ein anderes Datum`,
  'key-date-forecast': ({ package: pack }) =>
    `der Ecktermin von ${pack} hat eine Vorhersage, die der Plan nicht ergibt`,
  'key-date-stated-missed': ({ package: pack }) =>
    `der Ecktermin von ${pack} ist gehalten, aber als verfehlt angegeben`,
  'key-date-stated-met': ({ package: pack }) =>
    `der Ecktermin von ${pack} ist als gehalten angegeben, ist es aber nicht`,
  'key-date-float-unplaced': ({ package: pack }) =>
    `der Ecktermin von ${pack} hat Puffer, obwohl Arbeit keinen Platz hat`,
  'key-date-extra': ({ package: pack }) =>
    `für ${pack} ist ein Ecktermin angegeben, den der Plan nicht hat`,
  'key-date-late-otherwise': ({ package: pack }) =>
    `der Ecktermin von ${pack} ist um andere Minuten verspätet, als sein Puffer sagt`,
  'key-date-float-too-long': ({ package: pack }) =>
    `der Ecktermin von ${pack} hat mehr Puffer, als bis zu ihm Zeit ist`,
  'key-date-float-pushed': ({ package: pack, activity }) =>
    `der Ecktermin von ${pack} hat mehr Puffer, als ${activity} lässt, wenn es weitergeschoben wird`,

  'float-stated-twice': ({ activity }) =>
    `der Puffer von ${activity} ist zweimal angegeben, oder es hat keinen Platz`,
  'float-of': ({ activity, why }, say) => `der Puffer von ${activity} ${say(why)}`,
  'free-of-others': ({ why }, say) => `(frei von anderen) ${say(why)}`,
  'float-missing': () => 'fehlt',
  'float-from-elsewhere': () => 'beginnt nicht dort, wo es seinen Platz hat',
  'float-below-free': () => 'ist kleiner als sein freier Puffer',
  'float-not-critical': () => 'und das Wort kritisch stimmen nicht überein',
  'float-wrong-minutes': () => 'ist in den falschen Minuten gezählt',
  'float-not-to-latest': () => 'reicht nicht bis zu seinem spätesten Ende',
  'float-not-its-length': () =>
    'hat einen spätesten Anfang, der nicht um seine Dauer vor dem Ende liegt',
  'float-back-in-time': () => 'geht in der Zeit zurück',
  'float-leaves-usable': () => 'verlässt die nutzbare Zeit seiner Sperrpause',
  'float-past-end': () => 'geht über das Ende des Plans hinaus',
  'float-past-key-date': () => 'geht über seinen Ecktermin hinaus',
  'float-moves': ({ other }) => `schiebt ${other} weiter`,
  'float-moves-for-curing': ({ other }) => `schiebt ${other} weiter, wegen des Aushärtens`,
  'float-takes-from-others': () => 'nimmt anderen Gerät oder Ort',

  'listed-not-stated': (given) =>
    `${pair(given)} sind als ungesagt aufgeführt, und zwischen ihnen ist nichts offen`,
  'pair-listed-twice': (given) => `${pair(given)} sind zweimal aufgeführt`,
  'place-not-stated': (given) =>
    `${pair(given)} sind zur gleichen Zeit an einem Ort, und der Plan sagt es nicht`,
  'handback-not-stated': (given) =>
    `zwischen ${pair(given)} wird das Gleis zurückgegeben, und der Plan sagt nicht, dass dazu nichts angegeben ist`,
};

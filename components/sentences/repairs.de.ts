import type { RepairSentences } from '../../src/engine/index.js';
import { kindText } from '../shared/words.de.js';
import { numberText } from '../shared/format.js';
import { and, form, number } from './parts.de.js';

// From memory, to be read by a native speaker of the trade.

const where = (window: string | null): string => window ?? 'außerhalb der Sperrpausen';

export const repairs: RepairSentences = {
  'plan-has-no': ({ activity }) => `der Plan hat kein ${activity}`,
  'placed-though-done': ({ activity }) =>
    `${activity} ist untergebracht, obwohl nichts davon übrig ist`,
  'placed-twice': ({ activity }) => `${activity} ist mehr als einmal untergebracht`,
  'visit-of-units': ({ activity, units }) =>
    `${activity} hat einen Einsatz von ${number(units)} Einheiten`,
  'given-and-takes': ({ activity, taken, needed }) =>
    `${activity} hat ${number(taken)} Minuten und braucht ${number(needed)}`,
  'given-and-left': ({ activity, units, left }) =>
    `${activity} hat ${number(units)} Einheiten im Plan, und ${number(left)} sind übrig`,
  'two-visits': ({ activity }) => `${activity} hat zwei Einsätze zur selben Zeit`,
  'before-it-may': ({ activity }) => `${activity} beginnt, bevor es darf`,
  'needs-no-window': ({ activity }) =>
    `${activity} ist Arbeit außerhalb und braucht keine Sperrpause`,
  'in-curfew': ({ activity, curfew }) => `${activity} fällt in die Arbeitsruhe „${curfew}“`,
  'has-no-window': ({ activity }) =>
    `${activity} ist Arbeit im Gleisbereich und hat keine Sperrpause`,
  'window-not-in-plan': ({ activity, window }) =>
    `${activity} liegt in ${window}, das der Plan nicht hat`,
  'in-withdrawn': ({ activity, window }) => `${activity} liegt in ${window}, das zurückgezogen ist`,
  'is-fixed-in': ({ activity, window }) => `${activity} ist auf ${window} festgelegt`,
  'line-left-open': ({ activity, line, window }) =>
    `${activity} braucht eine Sperrung von ${line}, das ${window} offen lässt`,
  'reaches-outside': ({ activity, window }) => `${activity} reicht über ${window} hinaus`,
  'section-not-booked': ({ activity, section, window }) =>
    `${activity} braucht ${section} freigeschaltet, und ${window} bucht das nicht`,
  'not-inside': ({ activity, window }) => `${activity} liegt nicht innerhalb von ${window}`,
  'takes-time-of': ({ activity, kind, window }) =>
    `${activity} fällt in ${window} in Zeit, die keine Arbeitszeit ist: ${kindText[kind]}`,
  'time-not-usable': ({ activity, window }) =>
    `${activity} liegt in Zeit von ${window}, die nicht nutzbar ist`,
  'begins-too-soon': ({ activity, from, other, minutes }) =>
    `${activity} beginnt vor dem ${from === 'start' ? 'Beginn' : 'Ende'} von ${other} und ${number(minutes)} Minuten`,
  'uses-more-than-there': ({ activity, amount, resource }) =>
    `${activity} und was daneben geschieht brauchen ${number(amount)} ${resource}, mehr als da ist`,
  'in-closed-time': ({ activity, rule }) => `${activity} fällt in gesperrte Zeit: ${rule.text}`,
  'not-cured': ({ activity, pour, why }) =>
    `${activity} beginnt, bevor ${pour} ausgehärtet ist: ${why.text}`,
  'no-concrete': () => 'der Plan hat keine Angaben zum Beton',
  'temperature-not-known': () => 'für einen Teil der Zeit ist keine Temperatur bekannt',
  'maturity-reached': ({ reached, wanted }) =>
    `${numberText(reached, 1)} von ${number(wanted)} sind erreicht`,

  'no-longer-in-plan': ({ activity }) => `der Plan hat kein ${activity} mehr`,
  'window-not-there': ({ activity, window }) => `${activity} liegt in ${window}, das es nicht gibt`,
  'nothing-left-to-do': ({ activity }) => `von ${activity} ist nichts mehr zu tun`,
  'left-placed-later': ({ activity, window }) =>
    `was von ${activity} übrig ist, liegt alles später als der Einsatz ${window === null ? where(window) : `in ${window}`}`,
  'given-in-and-left': ({ activity, units, window, left }) =>
    `${activity} hat ${number(units)} Einheiten ${window === null ? where(window) : `in ${window}`}, und ${number(left)} sind übrig`,

  'no-time-left-for-it': () => 'dafür ist keine Zeit übrig',
  'window-gone': ({ window }) => `${window} ist nicht mehr im Plan`,
  'window-now-withdrawn': ({ window }) => `${window} ist zurückgezogen`,
  'window-takes-none': ({ window }) => `${window} nimmt keine Arbeit mehr auf`,
  'window-lacks-time': ({ window }) => `${window} hat nicht mehr die Zeit dafür`,
  'made-good-with': ({ name }) => `wird mit ${name} wieder befahrbar gemacht, und das bewegt sich`,
  'waits-for-mover': ({ name }) => `wartet auf ${name}, und das bewegt sich`,
  'mover-waits-for-it': ({ name }) => `${name} wartet darauf und bewegt sich`,
  'moves-with-others': () =>
    'könnte für sich bleiben; im gefundenen Plan weicht es mit anderer Arbeit',
  'place-taken-by': ({ names }) =>
    `braucht den Ort, den ${and(names)} ${form(names.length, 'belegt', 'belegen')}`,
  'shared-with': ({ resource, names }) => `${resource} wird mit ${and(names)} geteilt`,
  'too-late-there': ({ window }) =>
    `${window === null ? 'in der übrigen Zeit' : `in ${window}`} würde ein Ecktermin nicht gehalten`,
  'lacks-time-for-all': ({ window }) =>
    `${window ?? 'die übrige Zeit'} hat nicht mehr die Zeit für alles, was darin lag`,
  'had-no-place': () => 'es hatte zuvor keinen Platz',
};

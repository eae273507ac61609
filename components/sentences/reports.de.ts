import type { ReportSentences } from '../../src/engine/index.js';
import { headTitles } from '../overrun/head-titles.de.js';
import { percentText } from '../shared/chance.js';
import { cautionLines } from '../shared/words.de.js';
import { and, decimal, due, form, moment, number, sum, time } from './parts.de.js';
import { reportWords } from './report-words.de.js';

// What reports say. From memory, to be read by a native speaker of the trade.

const rounding: Readonly<Record<string, string>> = {
  'half-up': 'kaufmännisch',
  'half-even': 'ab der Hälfte zur geraden Ziffer',
};
type Stretch = Parameters<ReportSentences['from-to']>[0];
const fromTo = ({ start, end }: Stretch): string => `${moment(start)} bis ${moment(end)}`;

export const reports: ReportSentences = {
  'report-word': ({ word }) => reportWords[word],
  caution: ({ caution }) => cautionLines[caution]!,
  moment,
  'due-moment': due,
  'moment-in-zone': (at) => `${moment(at)} (${at.zone})`,
  'from-to': fromTo,
  money: sum,
  chance: ({ onTime }) => percentText(onTime),
  'by-clock-in': ({ zone }) => `nach der Uhr in ${zone}`,
  'agreed-plan': ({ revision, name, agreed, by, id }) =>
    `vereinbarter Plan ${number(revision)}, „${name}“, ${moment(agreed)}${by === null ? '' : `, durch ${by}`} (${id})`,
  'plan-as-given': ({ id }) => `Plan ${id}, wie gegeben`,
  'plan-proposed': ({ id }) => `Plan ${id}, von einer Suche vorgeschlagen und nicht vereinbart`,
  'plan-broken': ({ plan }, say) =>
    `${say(plan)}; ein Teil davon gilt in den Tabellen, wie sie sind, nicht mehr`,

  'overrun-title': ({ window }) => `Kosten einer späten Rückgabe von ${window}`,
  'overrun-file': ({ window }) => `Überziehung ${window}`,
  'handed-back-late': ({ minutes }) => `${time(minutes)} zu spät zurückgegeben`,
  'amounts-in': (given) =>
    `Beträge in ${given.currency}, jede Zeile einmal gerundet (${rounding[given.rounding] ?? given.rounding})`,
  'expected-cost': (given) =>
    `${sum(given.sum)}, Standardfehler ${decimal(given.error)}: das Mittel über ${number(given.shifts)} simulierte Schichten, die pünktlichen eingeschlossen`,
  'cost-percentiles': ({ sums }) =>
    `${sums.map(sum).join('; ')}: 50, 80 und 95 von 100 Schichten kosten nicht mehr`,
  'minutes-late-in': ({ minutes, currency }) => `${number(minutes)} min zu spät, ${currency}`,
  'trains-late-at': ({ minutes }) =>
    `Verspätete oder ausgefallene Züge, ${number(minutes)} min zu spät`,

  'account-title': ({ window }) => `Abrechnung der späten Rückgabe von ${window}`,
  'account-file': ({ window }) => `Abrechnung ${window}`,
  'claimed-by-name': ({ name }) => `Gefordert von ${name}`,
  'head-title': ({ head }) => headTitles[head],
  'options-title': ({ window }) => `Möglichkeiten für ${window}`,
  'options-file': ({ window }) => `Möglichkeiten ${window}`,
  'simulated-shifts': ({ shifts, seed }) =>
    `je ${number(shifts)} Schichten, Startwert ${seed}, für jede Möglichkeit derselbe Zufall`,

  'part-broken': ({ fault }, say) => `Gilt nicht mehr: ${say(fault)}`,
  'summary-file': ({ name }) => `Überblick ${name}`,
  'proposal-not-agreed': ({ id }) => `Vorschlag, nicht vereinbart (Kennung ${id})`,
  'plan-named': ({ id, name, revision, agreed, by }) =>
    `Plan ${revision === null ? '' : `${number(revision)} `}„${name}“${agreed === null ? '' : `, vereinbart ${moment(agreed)}`}${by === null ? '' : ` durch ${by}`} (Kennung ${id})`,
  'count-listed-below': ({ number: count }) => `${number(count)}, unten aufgeführt`,
  'good-and-checked': ({ known }, say) =>
    `${say(known)}; eine unabhängige Prüfung fand keine verletzte Regel`,
  'key-dates-met': ({ met, of }) =>
    `${number(met)} von ${number(of)} ${form(of, 'Ecktermin', 'Eckterminen')} gehalten`,
  'activities-left-over': ({ number: count }) =>
    `${number(count)} ${form(count, 'Vorgang', 'Vorgänge')} ganz oder teilweise übrig`,
  'windows-used': ({ number: count }) =>
    `${number(count)} ${form(count, 'Sperrpause', 'Sperrpausen')} genutzt`,
  'last-work-ends': (at) => `die letzte Arbeit endet ${moment(at)}`,
  'key-dates-late': ({ names }) =>
    `${form(names.length, 'Ecktermin', 'Ecktermine')} von ${and(names)}`,
  'windows-not-held': ({ windows }, say) =>
    `${form(windows.length, 'Sperrpause', 'Sperrpausen')} ${windows.map(({ window, why }) => `${window} (${say(why)})`).join(', ')}`,
  'late-by-minutes': ({ minutes }) => `${time(minutes)} zu spät`,
  'at-least-minutes': ({ minutes }) => `mindestens ${time(minutes)}`,
  'margin-of-required': ({ margin, required }) => `${time(margin)} von ${time(required)}`,
  'booked-stretch': fromTo,
  'changed-since': ({ plan }, say) => `Geändert seit ${say(plan)}`,
  'lies-at': ({ window, units, ...stretch }) =>
    `${window ?? 'außerhalb'} ${fromTo(stretch)}${units === null ? '' : ` (${number(units)} ${form(units, 'Einheit', 'Einheiten')})`}`,

  'next-weeks': ({ weeks }) => `Vorausschau: die nächsten ${number(weeks)} Wochen`,
  'look-ahead-file': ({ weeks, name }) => `Vorausschau ${weeks} Wochen ${name}`,
  'windows-with-work': ({ number: count, work }) =>
    `${number(count)}, davon ${number(work)} mit Arbeit`,
  'count-below': ({ number: count }) => `${number(count)}, unten`,
  'only-of-status': ({ window, why }, say) => `${window} hat Arbeit und ist nur ${say(why)}`,
  'booking-was-due': ({ window, milestone, due: at, more }) =>
    `${window}: „${milestone}“ war fällig ${moment(at)} und ist nicht als gehalten festgehalten${more > 0 ? `, und ${number(more)} weitere` : ''}`,
  'nobody-rostered': ({ window, minutes }) =>
    `${window}: für ${time(minutes)} davon ist niemand eingeteilt`,
  'waits-for-unplaced': ({ activity, start, other }) =>
    `${activity} (${moment(start)}) wartet auf ${other}, das nicht ganz untergebracht ist`,
  'not-in-resources': ({ resource }) =>
    `${resource} wird verlangt und steht in keiner Tabelle der Einsatzmittel: Wie viele es gibt, ist nicht bekannt`,
  'misses-key-date': ({ package: pack, due: at, forecast }) =>
    `${pack} verfehlt seinen Ecktermin ${due(at)}: ${forecast === null ? 'nicht alles davon ist untergebracht' : `Vorhersage ${moment(forecast)}`}`,
};

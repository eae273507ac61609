import type { OptionSentences } from '../../src/engine/index.js';
import { clockText } from '../shared/format.js';
import { and, decimal, due, form, moment, number, sum, time } from './parts.de.js';

// From memory, to be read by a native speaker of the trade.

type Given<K extends keyof OptionSentences> = Parameters<OptionSentences[K]>[0];
type Moment = Given<'cut-off-at'>['moment'];

/** Without its day: by the clocks of the night. */
const clock = ({ at, zone }: Moment): string => clockText(at, zone);

export const options: OptionSentences = {
  'as-planned': () => 'Wie geplant',
  'one-unit-less': () => 'Eine Einheit weniger',
  'earlier-cut-off': () => 'Frühere Spätestzeit',
  'cut-off-at': (given) => `Spätestzeit um ${clock(given.moment)}`,
  'another-order': () => 'Andere Reihenfolge',
  'extra-plant-or-gang': () => 'Zusätzliches Gerät oder eine weitere Kolonne',
  'one-more-of': ({ resource }) => `Einmal mehr: ${resource}`,
  'longer-by': ({ minutes }) => `${time(minutes)} länger`,
  'over-two-windows': () => 'In zwei Sperrpausen',

  'unit-less-in': ({ activity, window }) => `Eine Einheit von ${activity} weniger in ${window}.`,
  'units-less-in': ({ units, activity, window }) =>
    `${number(units)} ${form(units, 'Einheit', 'Einheiten')} von ${activity} weniger in ${window}.`,
  'left-out-of': ({ activity, window, minutes }) =>
    `${activity} entfällt in ${window} (${time(minutes)}).`,
  'fixed-no-more': ({ activity, window }) => `${activity} ist nicht mehr in ${window} festgelegt.`,
  'order-clear-sooner': ({ minutes }) =>
    `Dieselbe Arbeit ist in anderer Reihenfolge ${time(minutes)} früher fertig.`,
  'no-unit-begins-after': ({ activity, ...given }) =>
    `Nach ${clock(given.moment)} beginnt keine Einheit von ${activity} mehr; was dann übrig ist, geht in die folgenden Sperrpausen.`,
  'one-more-on-days': ({ resource, window, minutes }) =>
    `Einmal mehr ${resource} an den Tagen von ${window}; die Arbeit ist ${time(minutes)} früher fertig als in ihrer besten Reihenfolge ohne.`,
  'more-on-days': ({ count, resource, window }) =>
    `${number(count)} mehr von ${resource} an den Tagen von ${window}.`,
  'booked-as-planned': ({ window, end }) =>
    `${window} wird bis ${moment(end)} gebucht; die Arbeit bleibt wie geplant.`,
  'booked-to': ({ window, end }) => `${window} wird bis ${moment(end)} gebucht.`,
  'like-window-booked': ({ window, ...given }) =>
    `Eine Sperrpause wie ${window} wird für ${moment(given.moment)} gebucht, und die zweite Hälfte der Arbeit geht dorthin.`,
  'as-you-changed': ({ name }) => `So, wie Sie den Plan geändert haben: ${name}.`,

  'one-unit-always': () => 'In jedem Lauf wird mindestens eine Einheit fertig.',
  'no-price-for-left-over': () =>
    'Die Preisliste hat keinen Preis für übrige Arbeit: Nur Gerät und Personal dafür zählen.',
  'windows-added': ({ windows }) =>
    `In ${windows.join(', ')} ist nach Plan keine Arbeit: Was das Buchen ${windows.length === 1 ? 'dieser Sperrpause' : 'dieser Sperrpausen'} kostet, ist nicht in der Summe.`,
  'key-date-turns': ({ package: name, moment: at, missed, sometimes }) =>
    `Ecktermin von ${name}, ${due(at)}: wie geplant ${missed ? 'gehalten' : 'verfehlt'}, ${sometimes ? 'in manchen der simulierten Schichten' : 'so'} ${missed ? 'verfehlt' : 'gehalten'}.`,
  'one-more-no-rate': ({ resource }) =>
    `${resource} hat keinen Preis je Stunde: Einmal mehr ist nicht in der Summe.`,
  'more-no-rate': ({ resource }) =>
    `${resource} hat keinen Preis je Stunde: Mehr davon ist nicht in der Summe.`,
  'one-more-paid': () =>
    'Was hinzukommt, wird vom ersten bis zum letzten Einsatz bezahlt, mindestens aber mit seinen Mindeststunden.',
  'no-price-for-longer': () =>
    'Die Preisliste hat keinen Preis für das Buchen: Die längere Sperrpause kostet hier nichts.',
  'no-price-for-second': () =>
    'Die Preisliste hat keinen Preis für das Buchen: Die zweite Sperrpause kostet hier nichts.',
  'begins-before-longer-ends': ({ window }) =>
    `${window} beginnt, bevor die längere Sperrpause endet.`,
  'trains-rebooked': () =>
    'Züge, die vor dem neuen Ende fällig sind, gelten als mit ihm umgebucht und kosten hier nichts.',
  'change-not-priced': () =>
    'Was die Änderung selbst kostet, ist hier nicht bekannt und nicht in der Summe.',
  'check-found-fault': ({ what }, say) =>
    `Die Prüfung hat einen Fehler gefunden: Diesen Plan nicht verwenden. ${say(what)}.`,
  'key-date-not-in-total': ({ title, formula }, say) =>
    `${say(title)}: ${say(formula)}, und nicht in der Summe.`,
  'draws-shared': () =>
    'Der Zufall wird je Stück Arbeit gezogen, damit alle Möglichkeiten denselben haben; die Wahrscheinlichkeiten weichen von denen der Rückgabe um ihre Standardfehler ab.',
  'damages-counted': () =>
    'Gezählt: Vertragsstrafe für Verzug, nicht der Schaden, für den sie steht.',

  'finds-no-place': ({ activity, reasons }, say) =>
    `${activity} findet keinen Platz: ${reasons.map(say).join('; ')}.`,
  'no-order-sooner': () =>
    'Es wurde keine andere Reihenfolge der Arbeit gefunden, in der das Gleis früher frei ist.',
  'nothing-limited': () =>
    'Keine Arbeit dieser Sperrpause braucht Gerät oder Personal, von dem es nur begrenzt gibt.',
  'another-no-sooner': ({ resource, window }) =>
    `Mit noch einmal ${resource} wäre das Gleis nicht früher frei: Keine Arbeit in ${window} wartet darauf.`,
  'one-piece-only': () =>
    'Die Sperrpause enthält ein einziges Stück Arbeit, das sich nicht teilen lässt.',
  'second-not-written': () => 'Eine zweite Sperrpause lässt sich nicht neben die erste schreiben.',
  'no-units-to-stop-between': () =>
    'In dieser Sperrpause ist keine wiederholte Arbeit geplant; es gibt also keine Einheiten, zwischen denen man aufhören könnte.',
  'waits-for-all-units': ({ waits, activity }) =>
    `${and(waits)} ${form(waits.length, 'muss', 'müssen')} in derselben Sperrpause auf alle Einheiten von ${activity} warten: Bei einer weniger ${form(waits.length, 'bliebe auch das', 'blieben auch sie')} liegen.`,
  'makes-good-here': ({ activity, opened }) =>
    `${activity} macht das Gleis nach ${and(opened)} wieder befahrbar: Mit einer Einheit weniger wäre es nach dieser Sperrpause nicht befahrbar.`,
  'one-unit-only': ({ activity }) =>
    `In dieser Sperrpause ist nur eine Einheit von ${activity} geplant.`,
  'no-cut-off-cheaper': () =>
    'Keine frühere Spätestzeit, nach der alle Arbeit einen Platz hat, ist billiger, als bis zum gebuchten Ende zu arbeiten.',
  'same-in-every-shift': () =>
    'Sie ändert nichts: In jeder simulierten Schicht dieselben Kosten, und keine Arbeit geht anderswohin.',
  'wish-changes-nothing': () => 'Sie ändert nichts.',
  'longer-by-whole-minutes': () =>
    'Eine Sperrpause kann um ganze Minuten länger sein, mindestens um 1.',
  'no-such-resource': ({ resource }) => `Im Plan gibt es kein Einsatzmittel ${resource}.`,
  'more-by-whole-numbers': () => 'Mehr von einem Einsatzmittel ist eine ganze Zahl ab 1.',
  'units-or-cut-off': () =>
    'Eine Spätestzeit lässt weg, was bis dahin nicht begonnen ist: Entweder Einheiten zum Weglassen oder eine Spätestzeit angeben.',
  'cut-off-not-in': ({ window }) => `Die Spätestzeit liegt nicht in ${window}.`,
  'no-work-of-it-in': ({ activity, window }) =>
    `In ${window} ist keine Arbeit von ${activity} geplant.`,
  'may-leave-out': ({ activity, most, window }) =>
    `Von ${activity} können in ${window} 1 bis ${number(most)} weggelassen werden.`,
  'waits-for-left-out': ({ waits, window }) =>
    `${and(waits)} ${form(waits.length, 'muss', 'müssen')} in ${window} auf das warten, was weggelassen wird: ${form(waits.length, 'Dies', 'Diese')} auch weglassen.`,
  'window-there-no-more': ({ window }) => `${window} gibt es nicht mehr.`,
  'not-all-fits-any-more': ({ window, why }, say) =>
    `Nicht alle in ${window} geplante Arbeit passt noch. ${say(why)}`,
  'not-planned-so': ({ activities }) => `So lässt sich nicht planen: ${and(activities)}.`,
  'makers-before-finish': ({ early, activity }) =>
    `${and(early)} ${form(early.length, 'kann', 'können')} nicht dort sein, wo ${activity} nicht fertig ist`,
  'left-not-made-good': ({ activity, window, missing, before }) =>
    `${before ? `${activity} ist schon vorher getan, und das Gleis` : `Das Gleis nach ${activity}`} würde in ${window} nicht wieder befahrbar: ${and(missing)} ${form(missing.length, 'ist', 'sind')} dort nicht fertig`,

  'mean-of-handbacks': ({ count, change }) =>
    `Mittel aus ${number(count)} simulierten Rückgaben, jede nach ihrer Minute bepreist${change ? ', abzüglich desselben wie geplant' : ''}`,
  'mean-of-shifts': ({ count, ...given }) =>
    `Mittel aus ${number(count)} simulierten Schichten, jede mit dem, was bis ${clock(given.moment)} begonnen war`,
  'input-runs': () => 'Läufe',
  'input-seed': () => 'Startwert',
  'input-runs-that-cost': () => 'Läufe, die etwas kosten',
  'input-cut-off': () => 'Spätestzeit',
  'input-left-on-average': () => 'im Mittel übrig',
  'input-resource-in': ({ resource, window }) => `${resource}: ${window}`,

  'overrun-of': ({ windows }) => `Überziehung von ${and(windows)}`,
  'overrun-change-of': ({ windows }) => `Überziehung von ${and(windows)}: Änderung`,
  'overrun-change-later': () => 'Überziehung späterer Sperrpausen: Änderung',
  'plant-planned': () => 'Geplantes Gerät und Personal',
  'plant-change-of': ({ windows }) => `Gerät und Personal in ${and(windows)}: Änderung`,
  'nothing-with-rate': () => 'kein Gerät oder Personal mit einem Preis je Stunde',
  'none-of-it': () => 'keines',
  'less-as-planned': ({ after, before }, say) =>
    `${say(after)}; abzüglich wie geplant: ${say(before)}`,
  'nothing-left-over': () => 'nichts ist übrig',
  'in-proportion': ({ from, to }) => `anteilig zwischen ${number(from)} und ${number(to)} übrigen`,

  'left-booked-again': () => 'Neu buchen, was übrig ist',
  'unit-booked-again': () => 'Die Einheit neu buchen',
  'second-window': () => 'Die zweite Sperrpause',
  'change-of-order': () => 'Die andere Reihenfolge',
  'making-the-change': () => 'Die Änderung vornehmen',
  'further-time': ({ minutes }) => `Die weiteren ${time(minutes)}`,
  'what-more-costs': ({ resource }) => `Was ${resource} mehr kostet`,

  'same-only-if-free': ({ turn }, say) =>
    `So teuer wie geplant nur, wenn dies nichts kostet: ${say(turn)}.`,
  'dearer-before-paid': ({ turn, ...given }, say) =>
    `Um ${sum(given.sum)} teurer als wie geplant, noch bevor dies bezahlt ist: ${say(turn)}.`,
  'cheaper-while-less': ({ turn, each, ...given }, say) =>
    `Billiger als wie geplant, solange dies weniger kostet als ${sum(given.sum)}${
      each === null ? '' : ` (${sum(each.sum)} je ${each.by === 'hour' ? 'Stunde' : 'Einheit'})`
    }: ${say(turn)}.`,

  'same-on-average': ({ cheaper, dearer }, say) =>
    `„${say(dearer)}“ und „${say(cheaper)}“ kosten im Mittel gleich viel.`,
  'dearer-on-average': ({ cheaper, dearer, close, ...given }, say) =>
    `„${say(dearer)}“ kostet im Mittel ${sum(given.sum)} mehr als „${say(cheaper)}“${close ? ', bei so vielen Läufen zu wenig für ein Urteil' : ''}.`,
  'overruns-far-dearer': ({ times }) =>
    `Überziehungen müssten über ${number(times)}-mal so viel kosten, wie die Preisliste sagt, damit diese Möglichkeit die billigere wäre.`,
  'cheaper-where-overruns': ({ times, more, late }) =>
    `Sie wird die billigere von beiden, wo Überziehungen ${more ? 'mehr' : 'weniger'} als ${decimal(times)}-mal so viel kosten, wie die Preisliste sagt${
      late === null
        ? ''
        : `, oder entsprechend ${more ? 'häufiger' : 'seltener'} sind (verspätet in ${decimal(late.at)} % der Schichten statt in ${decimal(late.now)} %)`
    }.`,
  'cheaper-of-two-while': ({ name, turn, ...given }, say) =>
    `„${say(name)}“ ist die billigere von beiden, solange dies weniger kostet als ${sum(given.sum)}: ${say(turn)}.`,
  'as-much-as-late': ({ minutes, ...given }) =>
    `Ohne Überziehungen kostet sie ${sum(given.sum)} mehr; wie geplant kostet eine um ${number(minutes)} min verspätete Rückgabe mindestens so viel.`,
  'no-overrun-price-turns': () => 'Kein Preis einer Überziehung macht sie zur billigeren.',
};

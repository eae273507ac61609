import { durationText } from '../../../src/calendar/index.js';
import type { RowProblems } from '../../../src/engine/english/problems.js';

// From memory, to be read by a native speaker of the trade. Names of columns, and words that a file is read by, stay as they are.

const listed = (names: readonly string[]): string => names.map((name) => `„${name}“`).join(', ');
const oneOfTheTimes = 'Eine der beiden Zeiten berichtigen.';
const rising = 'Niedrig ist höchstens wahrscheinlich, und wahrscheinlich höchstens hoch.';
const risingLeast =
  'Das Mindeste ist höchstens das Wahrscheinlichste, und dieses höchstens das Meiste.';
const blank = 'Die Zelle leer lassen.';
const alone = (handedBack: string): string =>
  `Vorgang und Gleis leer lassen oder den Schritt „${handedBack}“ eintragen.`;

export const rows: RowProblems = {
  'cell-blank': ({ field }) => [`„${field}“ wird gebraucht, und die Zelle ist leer.`, 'Ausfüllen.'],
  'cell-too-long': ({ length, longestCell }) => [
    `Die Zelle hat ${length} Zeichen; gelesen werden höchstens ${longestCell}.`,
    'Kürzen.',
  ],
  'name-too-long': ({ length, longestName }) => [
    `Der Name hat ${length} Zeichen.`,
    `Auf ${longestName} kürzen.`,
  ],
  'name-holds-separator': ({ text }) => [
    `„${text}“ enthält ein ;, das anderswo Namen trennt.`,
    'Das ; herausnehmen.',
  ],
  'name-twice': ({ id, line }) => [
    `„${id}“ ist schon der Name von Zeile ${line}.`,
    'Jeder Zeile einen eigenen Namen geben.',
  ],
  'place-reads-two-ways': ({ own, number }) => [
    `„${own}“ kann in einer Tabelle mit Orten in Meilen ${number} Meter oder ${number} Meilen heißen.`,
    `${number} mi für Meilen oder ${Number(number) / 1000} km für Meter eintragen.`,
  ],
  'extent-half-given': ({ other, field }) => [
    `„${other}“ ist angegeben, und „${field}“ ist leer.`,
    'Beide Enden angeben, oder keines, wenn die Ausdehnung keine Rolle spielt.',
  ],
  'zone-not-known': ({ text }) => [
    `„${text}“ ist keine hier bekannte Zeitzone.`,
    'Eine wie Europe/London eintragen.',
  ],
  'finished-before-started': () => ['Es endete, bevor es begann.', oneOfTheTimes],
  'before-shift': ({ moment }) => [
    `${moment} liegt mehr als einen halben Tag vor jeder Sperrpause, die zu dem gefragten Zeitpunkt läuft.`,
    'Das Datum berichtigen.',
  ],
  'recorded-twice': ({ first, subject }) => [
    `Zeile ${first} hält ${subject} schon fest.`,
    'Je eine Zeile behalten: die mit dem letzten Stand.',
  ],
  'not-repeated': ({ activity }) => [
    `${activity ?? 'Ein Schritt'} ist keine Arbeit in Einheiten.`,
    'Die Zelle leer lassen und eintragen, wann es begann und endete.',
  ],
  'more-units': ({ units, activity, most }) => [
    `${units} Einheiten sind fertig, und ${activity} hat noch ${most} übrig.`,
    'Die in dieser Sperrpause fertigen Einheiten zählen.',
  ],
  'expected-of-line': () => [
    'Erwartet werden kann nur die Gewährung eines Gleises.',
    'Das Gleis in der Spalte „line“ nennen.',
  ],
  'asked-of-handback': ({ handedBack }) => [
    'Eine Zeile, die sagt, wann das Gleis zurückverlangt wurde, nennt sonst nichts.',
    alone(handedBack),
  ],
  'agreed-of-handback': ({ handedBack }) => [
    'Eine Zeile, die sagt, welches Ende vereinbart wurde, nennt sonst nichts.',
    alone(handedBack),
  ],
  'activity-or-step': () => [
    'Die Zeile muss einen Vorgang, einen Schritt oder ein Gleis nennen, und nur eines davon.',
    'Eines davon eintragen.',
  ],
  'line-not-known': ({ line, lines }) => [
    `Keine Sperrpause hat ein Gleis „${line}“.`,
    `Wie bei den Sperrpausen eintragen: ${listed(lines)}.`,
  ],
  'activity-not-known/seen': ({ activity }) => [
    `Es gibt keinen Vorgang „${activity}“ im Plan.`,
    'Wie in der Datei der Arbeit eintragen.',
  ],
  'step-not-known': ({ step, steps }) => [
    `Es gibt keinen Schritt „${step}“ in den Regeln.`,
    `Wie in den Regeln eintragen: ${listed(steps)}.`,
  ],
  'step-not-there': ({ stage, step }) => [
    `${stage === 'lead-in' ? 'Der Vorlauf' : 'Der Nachlauf'} hat keinen Schritt „${step}“.`,
    'Den Teil berichtigen oder leer lassen.',
  ],
  'step-twice': ({ step }) => [
    `Vorlauf und Nachlauf haben beide einen Schritt „${step}“.`,
    'lead-in oder lead-out in eine Spalte „stage“ eintragen.',
  ],
  'cell-blank/left': () => [
    'Die wenigsten oder die meisten übrigen Minuten sind angegeben, die wahrscheinlichsten nicht.',
    'Die wahrscheinlichsten eintragen.',
  ],
  'spread-out-of-order': ({ low, likely, high }) => [
    `Mindestens ${low}, wahrscheinlich ${likely} und höchstens ${high} steigen nicht an.`,
    risingLeast,
  ],
  'not-a-whole-number/units': ({ text }) => [
    `„${text}“ ist keine ganze Zahl.`,
    'Die Zahl der fertigen Einheiten eintragen.',
  ],
  'stage-not-known': ({ text }) => [
    `„${text}“ ist kein Teil der Sperrpause.`,
    'lead-in (Vorlauf) oder lead-out (Nachlauf) eintragen.',
  ],
  'event-holds-up': () => [
    'Die Zeile muss sagen, was das Ereignis aufhält: einen Vorgang, einen Schritt oder einen Zeitpunkt.',
    'Eines von „activity“, „step“ und „at“ ausfüllen.',
  ],
  'not-a-chance': ({ text }) => [
    `„${text}“ ist keine Wahrscheinlichkeit.`,
    '0 bis 1 eintragen, oder Prozent mit dem Zeichen.',
  ],
  'work-long': ({ minutes }) => [
    `Es dauert ${durationText(minutes)} ohne Halt.`,
    'Die Minuten berichtigen, oder stehen lassen, wenn sie so gemeint sind.',
  ],
  'minutes-and-units': () => [
    'Die Zeile nennt Minuten, wie für ein ganzes Stück Arbeit, und Einheiten, wie für wiederholte Arbeit.',
    'Eines der beiden leer lassen.',
  ],
  'duration-missing': () => [
    'Die Zeile nennt weder Minuten noch Einheiten.',
    'Minuten für ein ganzes Stück Arbeit angeben, oder Einheiten und Minuten je Einheit für wiederholte Arbeit.',
  ],
  'units-missing': ({ field }) => [
    `„${field}“ hat nur bei Einheiten einen Sinn, und „units“ ist leer.`,
    'Einheiten statt Minuten angeben oder diese Zelle leeren.',
  ],
  'minutes-per-unit-missing': () => [
    'Einheiten sind angegeben, aber nicht die Minuten, die eine braucht.',
    'Die Minuten je Einheit ausfüllen.',
  ],
  'more-done-than-units': ({ done, units }) => [
    `${done} Einheiten sind fertig von ${units}.`,
    'Die Einheiten berichtigen, oder wie viele fertig sind.',
  ],
  'number-too-small/unit': () => [
    'Eine Einheit braucht keine Zeit.',
    'Mindestens eine Minute angeben.',
  ],
  'spread-half-given': ({ other, field }) => [
    `„${other}“ ist angegeben, und „${field}“ ist leer.`,
    'Beide angeben, oder keines.',
  ],
  'spread-out-of-order/work': ({ low, likely, high }) => [
    `Niedrig ${low}, wahrscheinlich ${likely} und hoch ${high} steigen nicht an.`,
    rising,
  ],
  'key-date-before-not-before': () => [
    'Der Ecktermin lässt keine Zeit nach dem frühesten Beginn der Arbeit.',
    'Den Ecktermin oder „not before“ berichtigen.',
  ],
  'level-out-of-range': ({ text }) => [
    `${text} ist kein solcher Schallpegel.`,
    'dB(A) in 10 m Abstand eintragen.',
  ],
  'sureness-not-known': ({ text, surenesses }) => [
    `„${text}“ ist hier nicht bekannt.`,
    `Eines davon eintragen: ${surenesses.join(', ')}; oder leer lassen, dann gilt weak.`,
  ],
  'resource-disagrees': ({ field, value, before }) => [
    `„${field}“ ist hier ${value} und in einer früheren Zeile desselben Einsatzmittels ${before}.`,
    'Einmal angeben, oder jedes Mal dasselbe.',
  ],
  'daily-band-half-given': () => [
    'Eines von „from“ und „to“ ist eine Uhrzeit, das andere nicht.',
    'Zwei Uhrzeiten für jeden Tag angeben, oder zwei Daten.',
  ],
  'end-not-after-start/resource': () => [
    'Die Verfügbarkeit endet, bevor sie beginnt.',
    '„from“ oder „to“ berichtigen.',
  ],
  'no-such-time/resource': ({ text }) => [
    `„${text}“ ist keine Uhrzeit.`,
    'Eine Uhrzeit wie 05:30 eintragen.',
  ],
  'name-twice/turn': ({ id, before }) => [
    `„${id}“ ist schon der Name von Zeile ${before}.`,
    'Jeder Schicht einen eigenen Namen geben oder die Zelle leer lassen.',
  ],
  'name-twice/train': ({ id, before }) => [
    `Der Zug „${id}“ steht zu diesem Zeitpunkt schon in Zeile ${before}.`,
    'Eine der Zeilen löschen.',
  ],
  'number-too-small/train': ({ text }) => [
    `${text} ist kleiner als 0.`,
    '1 für einen gewöhnlichen Zug eintragen.',
  ],
  'time-missing/train': ({ text }) => [
    `„${text}“ ist ein Datum ohne Uhrzeit.`,
    'Auch die Uhrzeit eintragen.',
  ],
  'date-missing/train': ({ text }) => [
    `„${text}“ ist eine Uhrzeit ohne Datum.`,
    'Auch das Datum eintragen, oder eine Sperrpause nennen, die im Plan ist.',
  ],
  'cell-blank/wind': () => [
    'Die Zeile nennt weder mittleren Wind noch Böe.',
    'Eines davon ausfüllen oder die Zeile löschen.',
  ],
  'wind-at-other-height': ({ height }) => [
    `Geschwindigkeiten in ${height} m Höhe werden mit einer Formel auf 10 m umgerechnet.`,
    'Geschwindigkeiten in 10 m Höhe angeben, dann ist es eindeutig.',
  ],
  'time-twice': ({ before }) => [
    `Der Zeitpunkt steht schon in Zeile ${before}.`,
    'Eine der Zeilen löschen; in der Stunde, die die Uhr wiederholt, den Abstand zu UTC eintragen.',
  ],
  'height-out-of-range': ({ text }) => [
    `${text} ist keine solche Höhe.`,
    'Meter über dem Boden eintragen.',
  ],
  'window-not-known/placement': ({ where, outsideText }) => [
    `Es gibt keine Sperrpause „${where}“ im Plan.`,
    `Wie in der Datei der Sperrpausen eintragen, oder „${outsideText}“ für Arbeit, die keine braucht.`,
  ],
  'ends-before-start': ({ minutes }) => [
    `Es endet ${minutes} Minuten, bevor es beginnt.`,
    oneOfTheTimes,
  ],
  'activity-not-known/placement': ({ id }) => [
    `Es gibt keinen Vorgang „${id}“ im Plan.`,
    'Wie in der Datei der Arbeit eintragen oder die Zeile herausnehmen.',
  ],
  'units-of-whole-work': ({ id }) => [`„${id}“ ist ein ganzes Stück Arbeit ohne Einheiten.`, blank],
  'cell-blank/units': ({ id }) => [
    `„${id}“ ist Arbeit in Einheiten, und die Zeile sagt nicht, wie viele fertig werden.`,
    'Eintragen, wie viele.',
  ],
  'units-beyond-left': ({ units, id, still }) => [
    `${units} Einheiten von „${id}“ sind hier geplant, und ${still} sind für diese Zeile übrig.`,
    'Die Zahl verkleinern, oder units und done in der Datei der Arbeit berichtigen.',
  ],
  'not-a-whole-number/planned': ({ text }) => [
    `„${text}“ ist keine ganze Zahl ab 1.`,
    'Eine Anzahl eintragen.',
  ],
};

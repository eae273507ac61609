import type { LiveSentences } from '../../src/engine/index.js';
import { percentText } from '../shared/chance.js';
import { and, form, number, stepName, time } from './parts.de.js';

// From memory, to be read by a native speaker of the trade.

type Chance = Parameters<LiveSentences['all-as-planned']>[0]['onTime'];
const chance = ({ share, runs }: Chance): string => percentText(share, runs);

export const live: LiveSentences = {
  'all-as-planned': ({ onTime, wanted }) =>
    `Alles wie geplant: ${chance(onTime)}; angestrebt ${chance(wanted)}.`,
  'late-already': () =>
    'Die Zeit der Rückgabe ist vorbei: jetzt melden, dass das Gleis zu spät zurückgegeben wird.',
  'late-maybe': () => 'jetzt melden, dass das Gleis vielleicht zu spät zurückgegeben wird.',
  'nothing-may-go': ({ late, passed }) =>
    `Nichts von dem, was übrig ist, darf entfallen${passed ? '. ' : ': '}${late.text}`,
  'no-way-reaches': ({ late, passed }) =>
    `Kein Weg erreicht sie${passed ? '. ' : ': '}${late.text}`,
  'ways-compared': ({ ways, wanted }) =>
    `${ways.map(({ way, onTime }) => `${way.text}: ${chance(onTime)}`).join('; ')}; angestrebt ${chance(wanted)}.`,
  'way-as-planned': () => 'alles wie geplant',
  'way-without': ({ names }) => `ohne ${names.join(', ')}`,
  'way-none': ({ name }) => `keine Einheit von ${name}`,
  'way-stop-at': ({ units }) => `bei ${number(units)} aufhören`,
  'way-more': ({ units }) => `noch ${number(units)}`,
  'way-of': ({ units, name }) => `${number(units)} von ${name}`,
  'only-if-not-begun': ({ unit, name }) =>
    `Nur wenn Einheit ${number(unit)} von ${name} nicht begonnen ist: Sie gilt als im Gange, seit die letzte fertig ist.`,
  outrun: ({ name }) =>
    `${name} dauert länger, als längstens geschätzt war: auf keine Wahrscheinlichkeit bauen, bis eine neue Schätzung aufgeschrieben ist.`,
  'handed-back': ({ minutes, after, agreed }) =>
    `${time(minutes)} ${after ? 'nach' : 'vor'} dem ${agreed ? 'vereinbarten' : 'gebuchten'} Ende zurückgegeben.`,

  'all-must-finish': ({ name, binders }) =>
    `Alles von ${name} muss in dieser Sperrpause fertig werden: Es gehört zu dem, was das Gleis nach ${and(binders)} wieder befahrbar macht.`,
  'begun-and-unsaid': ({ name, opened }) =>
    `${and(opened)} ${form(opened.length, 'ist', 'sind')} begonnen, und nichts sagt, dass das Gleis ohne ${name} befahrbar ist.`,
  'waits-and-stays': ({ name }) => `${name} wartet darauf und darf nicht entfallen.`,
  'needed-to-make-good': ({ name, opened }) =>
    `${name} wird gebraucht, um das Gleis nach ${opened} wieder befahrbar zu machen.`,

  'record-not-here': ({ name, window }) =>
    `${name} ist in ${window} nicht geplant: Was davon aufgeschrieben ist, wird nicht verwendet.`,
  'record-no-step': ({ step, window }) =>
    `${window} hat für die Arbeit, die darin geplant ist, keinen Schritt „${stepName(step)}“: Was davon aufgeschrieben ist, wird nicht verwendet.`,
  'record-not-yet': ({ name }) =>
    `${stepName(name)}: Aufgeschrieben ist eine Zeit nach dem Augenblick der Vorhersage. Sie zählt noch nicht.`,
  'record-before-window': ({ name, window }) =>
    `${stepName(name)}: Aufgeschrieben ist eine Zeit, bevor ${window} beginnt. Sie zählt, wie sie dasteht: nachprüfen.`,
  'record-not-repeated': ({ name, units }) =>
    `${stepName(name)} ist keine Arbeit in Einheiten: Die davon aufgeschriebenen ${number(units)} Einheiten werden nicht verwendet.`,
  'record-more-units': ({ name, units, planned, window }) =>
    `${stepName(name)}: ${number(units)} Einheiten sind aufgeschrieben und ${number(planned)} in ${window} geplant. Es zählt als ganz fertig: die Zahl nachprüfen.`,
  'asked-too-late': () =>
    'Das Gleis wurde nicht früher verlangt als zu dem Ende, das zählt: Das ändert nichts.',
  'agreed-too-late': () => 'Das vereinbarte Ende liegt nicht vor dem gebuchten: Das ändert nichts.',
  'handed-back-open': ({ names }) =>
    `Das Gleis ist als zurückgegeben aufgeschrieben, und nichts sagt, dass ${and(names)} ${form(names.length, 'beendet ist', 'beendet sind')}. Zuvor muss jede Arbeitsstelle aufgegeben sein: sofort nachfragen.`,
  'grant-not-recorded': () =>
    'Es ist nicht aufgeschrieben, dass die Sperrpause gewährt ist: Sie zählt als in diesem Augenblick gewährt.',
  'line-grant-not-recorded': ({ name }) =>
    `${stepName(name)}: nicht aufgeschrieben, und niemand hat gesagt, wann. Es zählt als in diesem Augenblick gewährt.`,
};

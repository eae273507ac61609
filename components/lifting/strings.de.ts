import { cautionLines } from '../shared/words.de.js';
import type { LiftingStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: LiftingStrings = {
  title: 'Heben und Aushärten',
  cautions: 'Warnhinweise',
  cautionLines: [
    'Nach einer Vorhersage für 10 m Höhe, nicht nach dem Wind am Haken. Hebearbeiten brauchen den Plan einer bestellten Person, und es gilt das Handbuch des Krans.',
    'Nach den gegebenen Temperaturen. Eine Reife braucht die Kurve der Mischung und ersetzt keine Festigkeitsprüfung.',
    ...cautionLines,
  ],
  example:
    'Ein Beispiel, nicht das eigene: Es wirkt auf keinen Plan, bis eine Zahl geändert oder es übernommen wird.',
  take: 'In den Plan übernehmen',
  source: (source, sureness) => `Grenze aus: ${source} (${sureness})`,
  wind: 'Wind gegen die Grenze',
  noForecast:
    'Noch keine Vorhersage. Eine Tabelle mit Zeit und Wind oder Böen einlesen, um zu sehen, welche Stunden entfallen.',
  windTold: (limit, highest, stops) =>
    `Böen nach der Vorhersage bis ${highest} m/s; die Grenze ist ${limit} m/s; das Heben ruht ${stops}-mal.`,
  limitLine: (limit) => `Grenze ${limit} m/s`,
  stop: 'ruht',
  lost: 'Zum Heben verlorene Stunden',
  window: 'Sperrpause',
  lostHead: 'Verloren',
  openHead: 'Bleibt',
  unknownHead: 'Nicht vorhergesagt',
  highest: 'Höchste Bö',
  none: 'keine',
  why: 'Warum das Heben ruht',
  lifts: (ids) => `Arbeit, die hebt: ${ids}`,
  noLifts: 'Keine Arbeit nennt ein Einsatzmittel, das hebt.',
  inputs: 'Woraus die Grenze folgt',
  chart: 'Höchste Bö nach der Lasttabelle',
  height: 'Höhe der Auslegerspitze oder der Last',
  settle: 'Warten nach einer Bö darüber',
  tonnes: 'Last',
  area: 'Fläche zum Wind',
  drag: 'Luftwiderstand ihrer Form',
  use: 'Hebearbeit von diesen Stunden fernhalten',
  concrete: 'Beton gewinnt Festigkeit',
  noPours:
    'Keine geplante Arbeit wartet auf Beton. „A20 when cured“ unter after schreiben und die Arbeit planen.',
  pour: 'Betoniert',
  ready: 'Bereit',
  takes: 'Dauert',
  planGap: 'Der Plan wartet',
  activity: 'Vorgang',
  notKnown: 'nicht bekannt: Die Temperaturen enden vorher',
  assumed: (time) => `davon ${time} nach der angenommenen Temperatur`,
  short: (time) => `${time} zu wenig`,
  waits: (ids) => `${ids} wartet`,
  needed: 'Verlangte Reife',
  otherwise: 'Wo keine Temperatur gegeben ist',
  model: 'Formel',
  curveTold: (activity, ready) => `${activity} bereit: ${ready}`,
};

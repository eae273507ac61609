import { cautionLines } from '../shared/words.de.js';
import type { NoiseStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: NoiseStrings = {
  title: 'Lärm und Nachbarn',
  empty:
    'Kein Vorgang ist als laut angegeben oder hat Gerät der Liste. Eine Tabelle der Geräte mit ihrem Pegel in 10 m einlesen.',
  by: (name) => `Gemessen an: ${name}`,
  example:
    'Diese Grenzen und dieses Wohnhaus sind Beispiele, nicht die eigenen. Eine Zahl ändern oder sie in den Plan übernehmen.',
  take: 'In den Plan übernehmen',
  cautions: 'Warnhinweise',
  cautionLines,
  picture: 'Stunden, in denen jeder Vorgang laut sein darf',
  day: 'Wochentag',
  told: (over, count) =>
    `${over} von ${count} Vorgängen dürfen zu mancher Stunde nicht laut sein. Die Tabelle darunter nennt die Pegel.`,
  fromTo: (from, to) => `${from} bis ${to}`,
  may: 'darf laut sein',
  mayNot: 'zu laut',
  noLimit: 'keine Grenze gegeben',
  unknown: 'kein Pegel bekannt',
  levels: 'Erwarteter Pegel gegen die Grenze',
  activity: 'Vorgang',
  over: (db, level, limit) => `${level} dB, ${db} über ${limit}`,
  within: (level, limit) => `${level} dB, unter ${limit}`,
  plant: (names) => `Gerät: ${names}`,
  notListed: (names) => `Kein Pegel bekannt für: ${names}. Als still gerechnet.`,
  inputs: 'Woraus die Pegel folgen',
  metres: (name) => `${name}: Abstand`,
  screening: 'Abschirmung',
  ground: 'Boden dazwischen',
  hard: 'hart',
  soft: 'weich',
  onTime: 'Im Einsatz',
  ofTheTime: '% der Zeit',
  limit: (period) => `Grenze, ${period}`,
  use: 'Arbeit von den Stunden fernhalten, in denen sie zu laut wäre',
  consent: 'Vorabgenehmigung beantragen',
  window: 'Sperrpause',
  talk: 'Gespräche beginnen bis',
  apply: 'Beantragen bis Ende',
  state: 'Stand',
  states: {
    'in time': 'rechtzeitig',
    'too late for talks': 'zu spät für Gespräche',
    'too late': 'zu spät',
  },
  sources: 'Woher die Grenzen kommen',
};

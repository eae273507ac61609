import type { LedgerSentences } from '../../src/engine/index.js';
import { weekdays } from '../../src/model/weekdays.js';
import { numberText, weekdayText } from '../shared/format.js';
import { and, time } from './parts.de.js';

// From memory, to be read by a native speaker of the trade.

const conditions: Readonly<Record<Parameters<LedgerSentences['step-applies']>[0]['when'], string>> =
  {
    always: 'In jeder Sperrpause',
    isolation: 'Die Arbeit braucht eine Freischaltung',
    loud: 'Die Arbeit ist laut',
  };

export const ledger: LedgerSentences = {
  joined: ({ all, between }, say) => all.map(say).join(between),
  together: ({ all, between }) => all.map(({ text }) => text).join(between),
  source: ({ source }) => `Quelle: ${source}.`,
  'counted-forward': () => 'gezählt vom Beginn der Sperrpause an',
  'counted-back': () => 'zurückgezählt von der geforderten Reserve',
  'counted-again': ({ sections, at }) =>
    `gezählt ab ${at}, wenn ${sections} wieder freigeschaltet werden darf`,
  'counted-from-given-up': ({ sections, at }) =>
    `zurückgezählt von ${at}, bis wann ${sections} zurückgegeben sein muss`,
  'step-applies': ({ when, minutes, counted }) =>
    `${conditions[when]}: ${time(minutes)}, ${counted.text}.`,
  'step-alongside': ({ step, from, to }) => `Neben „${step}“, ${from} bis ${to}.`,
  'step-where-not-again': ({ step, from, to }) =>
    `Wo „${step}“ begönne, was nicht noch einmal getan wird: ${from} bis ${to}.`,
  'step-follows': ({ step }) => `„${step}“ gilt hier nicht, also folgt es auf die Schritte davor.`,
  'step-takes-no-time': () => 'Es braucht keine Zeit.',
  'step-all-beside': () => 'Alles davon läuft neben anderen Schritten: Mehr wird nicht abgezogen.',
  'step-part-beside': ({ minutes }) =>
    `${time(minutes)} davon laufen neben anderen Schritten und werden einmal abgezogen.`,
  'window-short-of-step': ({ needed, has }) =>
    `Braucht ${time(needed)}, hat ${time(has)}: Die Sperrpause ist zu kurz für ihre Abzüge.`,
  'given-up': ({ sections }) => `Freischaltung von ${sections} aufgehoben`,
  'over-before-given-up': ({ sections, at }) =>
    `${sections} muss bis ${at} zurückgegeben sein, also endet diese Arbeit, bevor die Reserve beginnt.`,
  'wait-for-isolation': ({ sections, at }) => `Warten auf Freischaltung von ${sections} ab ${at}`,
  'isolated-from': ({ sections, at }) =>
    `${sections} darf frühestens ab ${at} freigeschaltet werden.`,
  'dead-too-short': ({ sections, at }) =>
    `Vor ${at} darf ${sections} nicht lange genug freigeschaltet sein, um freizuschalten, zu arbeiten und aufzuheben.`,
  margin: () => 'Geforderte Rückgabereserve',
  'margin-kept': ({ minutes }) => `Vor dem gebuchten Ende freigehalten: ${time(minutes)}.`,
  'window-withdrawn': () => 'Die Sperrpause ist zurückgezogen.',
  'window-does-not-isolate': ({ section }) => `Die Sperrpause schaltet ${section} nicht frei.`,
  'not-booked': () => 'Freischaltung nicht gebucht',
  'cannot-begin': ({ sections }) =>
    `Die Sperrpause schaltet ${and(sections)} nicht frei: Diese Arbeit kann nicht beginnen.`,
  usable: () => 'Nutzbar',
  'left-for-work': () => 'Bleibt für Arbeit, die geforderte Reserve eingehalten.',
  curfew: ({ bars, from, to, days }) => {
    const nights = days?.map((day) => weekdayText(weekdays.indexOf(day) + 1)).join(', ');
    return `${bars === 'all' ? 'Alle Arbeit' : 'Laute Arbeit'} ruht von ${from} bis ${to}${nights === undefined ? '' : `, wenn der Tag des Beginns einer von diesen ist: ${nights}`}.`;
  },
  'shift-changeover': () => 'Schichtübergabe',
  'shift-lasts': ({ longest, changeover }) =>
    `Eine Schicht dauert längstens ${time(longest)}; die Übergabe nimmt deren letzte ${time(changeover)}.`,
  'lifting-stopped': () => 'Heben ruht nach der Vorhersage',
  'gusts-over': ({ gust, height, limit }) =>
    `Böen bis ${numberText(gust, 1)} m/s in ${numberText(height)} m nach der Vorhersage; die Grenze ist ${numberText(limit, 1)}.`,
  lightning: () => 'Blitze sind vorhergesagt.',
  'too-cold': ({ coldest, limit }) =>
    `${numberText(coldest, 0)} °C nach der Vorhersage; der Kran arbeitet ab ${numberText(limit)} °C.`,
  'wind-decides': ({ source }) =>
    `Quelle der Grenze: ${source}. Der Wind am Haken entscheidet, nicht eine Vorhersage.`,
  'too-loud-for': ({ dwelling, period }) => `Zu laut für ${dwelling}: ${period}`,
  'noise-over': ({ level, limit, over }) =>
    `${numberText(level, 1)} dB berechnet, ${numberText(limit, 1)} erlaubt: ${numberText(over, 1)} darüber.`,
  'noise-screening': () =>
    'Nur eine Vorprüfung: Eine Genehmigung oder eine Entscheidung über Nachbarn braucht Fachleute für Schall.',
};

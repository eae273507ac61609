import { countText } from '../../shared/format.js';
import type { SharingStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: SharingStrings = {
  heading: 'Mit anderen geteilt',
  others: 'Andere, die den Plan offen haben',
  shared: 'Geteilt',
  readOnly: ', nur lesen',
  othersHere: (count) => `${countText(count, 'andere Person', 'andere Personen')} hier`,
  isAway: 'Ohne Verbindung zu den anderen',
  isRefused: 'Teilen abgelehnt',
  joining: 'Verbindung wird aufgenommen',
  about:
    'Mehrere arbeiten an einem Plan über einen Server, den eine Person davon betreibt: possession-fit share. Er nennt eine Adresse und zwei Schlüssel, einen zum Lesen und einen zum Schreiben. Der Schlüssel bleibt auf diesem Gerät, bis Sie den Plan verlassen, und geht allein an diesen Server.',
  yourName: 'Ihr Name',
  address: 'Adresse',
  token: 'Schlüssel',
  share: 'Diesen Plan dort teilen',
  keepFirst: 'Den Plan zuerst auf diesem Gerät behalten.',
  look: 'Einen Plan von dort öffnen',
  asked: 'Der Server wird gefragt.',
  noneThere: 'Dort hat noch niemand einen Plan geteilt.',
  noName: 'ein Plan ohne Namen',
  open: 'Öffnen',
  reads: 'Mit Ihrem Schlüssel können Sie den Plan lesen, nicht ändern.',
  at: (address, name) =>
    `${address}, als ${name || 'jemand ohne Namen'}. Ein Name ist, was jemand geschrieben hat; er beweist nichts.`,
  somebody: 'jemand ohne Namen',
  togetherReads: 'Was die anderen ändern, kommt hierher, sobald es geändert ist.',
  together:
    'Was hier geändert wird, geht sofort an die anderen, und was sie ändern, kommt hierher.',
  awayReads: 'Was die anderen ändern, kommt, wenn der Server wieder antwortet.',
  away: 'Hier geht die Arbeit weiter; sie wird mit der der anderen vereint, wenn der Server wieder antwortet.',
  refused: 'Der Plan auf diesem Gerät bleibt, wie er ist, und geht an niemanden.',
  cell: (table, row) => `${table}, Zeile ${row}`,
  mayRead: 'darf nur lesen',
  left: 'Der Plan wird von hier aus nicht mehr geteilt. Dieses Gerät behält eine Kopie.',
  noToken: 'Ein Schlüssel wird gebraucht: Der Server nennt zwei.',
};

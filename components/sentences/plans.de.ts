import type { PlanSentences } from '../../src/engine/index.js';
import { and, form, number, time } from './parts.de.js';

type Far = Parameters<PlanSentences['found-from-best']>[0];

// From memory, to be read by a native speaker of the trade.

const aims: Readonly<Record<Far['aim'], string>> = {
  'key-dates': 'Ecktermine',
  margins: 'Reserven',
  finish: 'Fertigstellung',
  'fewest-windows': 'Anzahl der Sperrpausen',
};
const far = ({ aim, far: amount }: Far): string =>
  aim === 'fewest-windows'
    ? `${number(amount)} ${form(amount, 'Sperrpause', 'Sperrpausen')}`
    : time(amount);
const pairs = (count: number): string =>
  `${number(count)} ${form(count, 'Paar', 'Paaren')} von Arbeiten`;
const pieces = (names: readonly string[]): string =>
  names.length > 6
    ? `${names.slice(0, 5).join(', ')} und ${names.length - 5} weitere`
    : names.join(', ');
const unsaid = 'nichts sagt, ob das Gleis dazwischen befahrbar ist';

export const plans: PlanSentences = {
  'nothing-to-plan': () => 'nichts zu planen',
  'nothing-placed': () => 'nichts ist untergebracht',
  'nothing-placed-stopped': () => 'nichts ist untergebracht: Die Suche wurde zu früh beendet',
  'proven-best': () => 'bewiesen der beste',
  'more-might-go': () =>
    'der beste gefundene, nicht gezeigt, dass nicht mehr untergebracht werden kann',
  'found-from-best': (known) => `der beste gefundene, höchstens ${far(known)} vom besten entfernt`,
  'first-proven': ({ first, ...known }) =>
    `${aims[first]}: bewiesen, keiner ist besser; ${aims[known.aim]}: der beste gefundene, höchstens ${far(known)} vom besten entfernt`,
  'given-broken': () => 'wie gegeben; ein Teil davon gilt nicht mehr',
  'given-more-might-go': () =>
    'wie gegeben, nicht gezeigt, dass nicht mehr untergebracht werden kann',
  'given-from-best': (known) =>
    `wie gegeben; ${aims[known.aim]} höchstens ${far(known)} vom besten entfernt`,
  'given-proven': ({ known }) => `wie gegeben; ${known.text}`,
  'search-alone': ({ between, beside, stops, known }) => {
    const open = [
      ...(between > 0 ? [`ob das Gleis zwischen ${pairs(between)} befahrbar ist`] : []),
      ...(beside > 0 ? [`ob bei ${pairs(beside)} beide sich einen Ort teilen dürfen`] : []),
      ...(stops ? ['ob das Gleis befahrbar ist, wo Arbeit aufhört'] : []),
    ];
    return `nur von der Suche gesagt, denn niemand hat gesagt, ${open.join(', oder ')}: ${known.text}`;
  },
  'search-cut-short': () =>
    'Die Suche wurde abgebrochen: Ein anderer Rechner, oder dieser zu einer anderen Zeit, kann zu einem anderen Plan kommen',
  'left-open': ({ packages }) => {
    const each = packages.map(
      (item) =>
        `${pieces(item.begun)} von ${item.package} ${form(item.begun.length, 'ist', 'sind')} untergebracht und ${pieces(item.left)} ${form(item.left.length, 'ist', 'sind')} übrig`,
    );
    return `Nichts sagt, ob das Gleis befahrbar ist, wo Arbeit aufhört: ${each.join('; ')}.`;
  },
  'goes-on-between': ({ activity, windows }) =>
    `${activity} geht in ${and(windows)} weiter: ${unsaid}`,
  'in-two-windows': ({ activity, window, other, otherWindow }) =>
    `${activity} liegt in ${window} und ${other} in ${otherWindow}: ${unsaid}`,
  'at-one-place': ({ activity, other, windows, silent }) =>
    `${activity} und ${other} geschehen in ${and(windows)} zur selben Zeit am selben Ort: ${and(silent)} ${form(silent.length, 'sagt', 'sagen')} nicht, dass man ihn teilen darf`,
};

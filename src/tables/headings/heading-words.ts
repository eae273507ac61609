// The words of a heading, reduced to what they mean: one word for singular and plural, for short forms, and for the
// German and French words that tables of this trade carry.

/** A meaning, and the words for it besides itself. Without accents; plurals in s need not be listed. */
const wordsFor: Readonly<Record<string, string>> = {
  window:
    'possession poss blockade sperrpause sperrpausen zeitfenster fenster sperrung gleissperrung fenetre plage intervalle',
  line: 'lines track road gleis gleise voie',
  blocked: 'block blocks shut closed gesperrt gesperrte gesperrtes interceptee fermee bloquee',
  isolation:
    'isolated isolate isolations abschaltung freischaltung abgeschaltet abgeschaltete spannungslos spannungslose coupure consignation consignee isolee',
  section: 'sect abschnitt abschnitte schaltabschnitt schaltabschnitte secteur',
  electric:
    'electrical elec ole ohl ohle elektrisch elektrische electrique oberleitung catenaire traction',
  status: 'state zustand statut etat buchungsstatus',
  start: 'begin beginning beginn anfang debut commence commencement started',
  end: 'ending finish ende schluss fin ended finished',
  time: 'times uhrzeit zeit heure',
  date: 'datum jour',
  from: 'von ab partir',
  to: 'bis until till jusqu',
  chainage: 'mileage kilometre km pk kilometrierung metrage kilometrage mileages',
  number: 'no nr num numero nummer',
  id: 'ref reference code kennung identifier referenz',
  title: 'titel libelle intitule',
  name: 'bezeichnung designation nom',
  description: 'desc descr beschreibung',
  package: 'pkg pkge paket arbeitspaket lot',
  activity: 'task act vorgang tatigkeit aktivitat activite tache',
  work: 'works arbeit arbeiten travaux',
  duration: 'dauer duree dur',
  minute: 'min minuten',
  hour: 'hr hrs h stunden stunde std hourly horaire',
  unit: 'einheit einheiten unite',
  per: 'each pro par je',
  quantity: 'qty menge anzahl stuckzahl quantite nombre',
  done: 'installed erledigt fertig eingebaut fait realise',
  required: 'needed need req reqd benotigt requis',
  resource: 'ressource ressourcen betriebsmittel moyen',
  capacity: 'kapazitat capacite',
  available: 'availability verfugbar disponible',
  rate: 'satz taux',
  loud: 'noisy laut bruyant',
  noise: 'larm bruit',
  earliest: 'fruhestens fruhester fruheste tot',
  latest: 'spatestens spatester tard',
  deadline: 'stichtag frist endtermin echeance limite',
  predecessor: 'pred preds vorganger predecesseur',
  after: 'nach apres',
  depends: 'depend',
  passes: 'passing passage durchfahrt',
  train: 'zug zuge',
  zone: 'zeitzone fuseau',
  location: 'ort lieu standort localisation',
};

/** Words that stand for several. */
const compounds: ReadonlyMap<string, string> = new Map([
  ['setup', 'set up'],
  ['startzeit', 'start time'],
  ['anfangszeit', 'start time'],
  ['startdatum', 'start date'],
  ['endzeit', 'end time'],
  ['enddatum', 'end date'],
  ['zugnummer', 'train number'],
  ['stundensatz', 'rate hour'],
  ['timezone', 'time zone'],
]);

const fillers = new Set(
  'the a an of for is are be which what and et und der die das des den dem le la les l d de du au aux all total plus any'.split(
    ' ',
  ),
);

const meaning: ReadonlyMap<string, string> = new Map(
  Object.entries(wordsFor).flatMap(([token, words]) =>
    [token, ...words.split(' ')].map((word) => [word, token] as const),
  ),
);

/** The words of a heading in small letters, split where case, spaces or signs part them; the unit is one of them. */
export function wordsOf(heading: string): string[] {
  return heading
    .slice(0, 200)
    .normalize('NFKC')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** What the words of a heading mean, each once, in an order that does not hang on theirs. */
export function meaningOf(words: readonly string[]): readonly string[] {
  const all = words.flatMap((word) => {
    const bare = withoutAccents(word);
    return compounds.get(bare)?.split(' ') ?? [bare];
  });
  const tokens = all.map(tokenOf);
  const meaningful = tokens.filter((token) => !fillers.has(token));
  return [...new Set(meaningful.length > 0 ? meaningful : tokens)].sort();
}

export const withoutAccents = (word: string): string =>
  word.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('ß', 'ss').replaceAll('œ', 'oe');

/** The meaning of a word, by its plural in s too; the word itself, in the singular, where it has none listed. */
function tokenOf(word: string): string {
  const bare = word.length > 3 && /[^su]s$/.test(word) ? word.slice(0, -1) : word;
  const listed = meaning.get(word) ?? meaning.get(bare);
  if (listed !== undefined) return listed;
  const ending = word.length > 4 && word.endsWith('ies') ? `${word.slice(0, -3)}y` : bare;
  return meaning.get(ending) ?? ending;
}

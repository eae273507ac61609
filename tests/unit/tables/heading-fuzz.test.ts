// How headings as people write them fare: read, asked about with the right meaning, or refused by name. None may be read
// as something else. The German and French words are from memory, common practice, no source.
import { describe, expect, it } from 'vitest';
import type { TableKind } from '../../../src/model/index.js';
import { decidesDanger } from '../../../src/tables/headings/danger-fields.js';
import { fieldsSuggested, matchColumns } from '../../../src/tables/index.js';

const written: readonly (readonly [kind: TableKind, field: string, headings: string])[] = [
  [
    'windows',
    'window',
    'Possession No.|Poss Ref|POSSESSION NUMBER|Blockades|Window code|Sperrpause|Plage travaux|Possesion',
  ],
  [
    'windows',
    'start',
    'Start of possession|Date & time start|Begins at|Poss. start|Beginn|Startzeit|Heure de début|Début|Strat',
  ],
  [
    'windows',
    'end',
    'End of possession|Possession end time|Ends at|Ende|Endzeit|Heure de fin|Fin|Finsh',
  ],
  [
    'windows',
    'lines',
    'Possession lines|Lines to be blocked|Track blocked|Tracks closed|Blocked track|Line(s) blocked|Gesperrte Gleise|Gleis|Voies interceptées|Voie|Lnes blocked|Roads shut',
  ],
  [
    'windows',
    'isolation',
    'Isolated sections|Isolation sections|OLE section|Elec. sections|Dead section|Sections to be isolated|Abgeschaltete Abschnitte|Sections isolées|Isolaton',
  ],
  [
    'windows',
    'status',
    'Possession status|Booking state|Planned status|Zustand|Statut|Staus|Approved',
  ],
  ['work', 'activity', 'Task Ref|Activity No|Activities|Vorgang|Tâche|Actvity'],
  ['work', 'package', 'Work packages|WP|Arbeitspaket|Lot de travaux|Pakage'],
  [
    'work',
    'minutes',
    'Duration (hrs)|Task duration|Dauer (Min)|Durée (min)|Likely duration|Duraton',
  ],
  ['work', 'units', 'No. of units|Quantity of units|Units to do|Anzahl|Quantité|Unts'],
  ['work', 'done', 'Installed|Units installed|Completed so far|Erledigt|Déjà fait'],
  [
    'work',
    'minutes per unit',
    'Mins per unit|Min/unit|Minutes each unit|Time per unit (min)|Minuten pro Einheit|Minutes par unité|Hours per unit',
  ],
  ['work', 'lines', 'Lines required|Track needed|Required lines|Benötigte Gleise|Voies'],
  [
    'work',
    'isolation',
    'Isolated sections|Isolation required|Sections isolated|Abschaltung|Consignation',
  ],
  [
    'work',
    'key date',
    'Required by|Needed by date|Due by|Deadline date|Stichtag|Date limite|Deadlne',
  ],
  ['work', 'not before', 'Earliest start date|No earlier than|Frühester Beginn|Début au plus tôt'],
  [
    'work',
    'resources',
    'Resources required|Plant & labour|Betriebsmittel|Ressources|Moyens|Resorces',
  ],
  ['work', 'after', 'Preds|Predecessor(s)|Depends on|Vorgänger|Prédécesseurs|Predecesor'],
  ['resources', 'resource', 'Resource name|Resources|Ressource|Betriebsmittel|Resorce'],
  [
    'resources',
    'capacity',
    'Number available|Quantity available|Capacity (no.)|Kapazität|Anzahl|Capacité|Capcity',
  ],
  ['resources', 'rate per hour', 'Rate/h|Hourly rates|Rate per hr|Stundensatz|Taux horaire'],
  ['resources', 'from', 'Available from|Verfügbar ab|Disponible à partir de'],
  ['trains', 'train', 'Train number|Train No.|Zugnummer|Numéro de train'],
  ['trains', 'passes at', 'Passing time|Time passing|Heure de passage|Durchfahrt'],
];

const foreign =
  'Lines open|Lines not blocked|Line speed|Isolation status|Status date|Remarks|Foreman|Contact|Weather|Cost code|Drawing no|Trains blocked|Bemerkung|Remarque|Location|Section foreman|Isolation not required'.split(
    '|',
  );

const variants = (heading: string): readonly string[] => [
  heading,
  heading.toUpperCase(),
  ` ${heading.replaceAll(' ', '_')} `,
  `The ${heading}`,
];

type Fate = 'read' | 'asked' | 'refused' | 'wrong';

function fateOf(kind: TableKind, field: string, heading: string): Fate {
  const found = [...matchColumns([heading], kind).fields.keys()][0] as string | undefined;
  if (found !== undefined) return found === field ? 'read' : 'wrong';
  return (fieldsSuggested(heading, kind, []) as readonly string[]).includes(field)
    ? 'asked'
    : 'refused';
}

describe('headings as people write them', () => {
  const all = written.flatMap(([kind, field, headings]) =>
    headings
      .split('|')
      .flatMap(variants)
      .map((heading) => ({ kind, field, heading, fate: fateOf(kind, field, heading) })),
  );
  const share = (fate: Fate): number =>
    all.filter((item) => item.fate === fate).length / all.length;

  it('are read, or asked about with the right meaning, nearly all', () => {
    const told = (['read', 'asked', 'refused', 'wrong'] as const)
      .map((fate) => `${fate} ${(100 * share(fate)).toFixed(1)} %`)
      .join(', ');
    console.info(`${all.length} headings: ${told}`);
    const missed = all.filter((item) => item.fate === 'refused').map((item) => item.heading);
    // Lines, isolation and status are read under exact headings alone, and asked about under every other.
    const harmless = all.filter(({ kind, field }) => !decidesDanger(kind, field));
    const read = harmless.filter((item) => item.fate === 'read').length;
    expect(read / harmless.length, missed.join(', ')).toBeGreaterThan(0.8);
    expect(share('read') + share('asked')).toBeGreaterThan(0.95);
  });

  it('are never read as something else', () => {
    expect(all.filter((item) => item.fate === 'wrong')).toEqual([]);
  });

  it('that mean no column are read as none', () => {
    for (const kind of ['windows', 'work'] as const)
      for (const heading of foreign.flatMap(variants))
        expect([heading, ...matchColumns([heading], kind).fields.keys()]).toEqual([heading]);
  });
});

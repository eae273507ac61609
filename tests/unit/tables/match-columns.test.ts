import { describe, expect, it } from 'vitest';
import { entryOf, fields, guessKind, headingsOf, matchColumns } from '../../../src/tables/index.js';
import { unitOfHeading } from '../../../src/tables/headings/heading-units.js';
import { tableKinds } from '../../../src/model/index.js';

describe('column headings', () => {
  it.each(tableKinds)('of our own are all found in a table of %s', (kind) => {
    const own = headingsOf(kind);
    const match = matchColumns(own, kind);
    expect([...match.fields]).toEqual(own.map((field, index) => [field, index]));
    expect(match).toMatchObject({ unmatched: [], doubled: [], missing: [], mapFaults: [] });
  });

  it.each(tableKinds)('have no synonym that means two fields in a table of %s', (kind) => {
    const all = Object.entries(fields[kind]).flatMap(([field, synonyms]) => [field, ...synonyms]);
    expect(new Set(all).size).toBe(all.length);
  });

  it('match whatever their case, spacing, punctuation and unit', () => {
    const columns = [
      'POSSESSION_REF',
      ' Start  Time ',
      'Until',
      'Chainage from (m)',
      'toChainage',
      'Weather',
    ];
    const match = matchColumns(columns, 'windows');
    expect(Object.fromEntries(match.fields)).toEqual({
      window: 0,
      start: 1,
      end: 2,
      from: 3,
      to: 4,
    });
    expect(match.unmatched).toEqual([5]);
  });

  it('in trade words match those of work', () => {
    const columns = [
      'WP',
      'Task ID',
      'Predecessors',
      'Duration (mins)',
      'Qty',
      'Plant',
      'Deadline',
      'Earliest start',
    ];
    expect(Object.fromEntries(matchColumns(columns, 'work').fields)).toEqual({
      package: 0,
      activity: 1,
      after: 2,
      minutes: 3,
      units: 4,
      resources: 5,
      'key date': 6,
      'not before': 7,
    });
  });

  it('of our own come before synonyms, which then stay unmatched', () => {
    const match = matchColumns(['Duration', 'activity', 'minutes'], 'work');
    expect(match.fields.get('minutes')).toBe(2);
    expect(match.unmatched).toEqual([0]);
  });

  it('that answer equally well are used by none', () => {
    const match = matchColumns(['activity', 'minutes', 'Minutes'], 'work');
    expect(match.doubled).toEqual([{ field: 'minutes', columns: [1, 2] }]);
    expect(match.fields.has('minutes')).toBe(false);
  });

  it('chosen by hand come before all', () => {
    const match = matchColumns(['start', 'Booked', 'window', 'end'], 'windows', {
      start: 'Booked',
    });
    expect(match.fields.get('start')).toBe(1);
    expect(match.unmatched).toEqual([0]);
  });

  it('chosen by hand but not there are told of', () => {
    const map = { start: 'Nowhere', wings: 'window' };
    expect(matchColumns(['window', 'end'], 'windows', map).mapFaults).toEqual([
      { field: 'start', heading: 'Nowhere' },
      { field: 'wings', heading: 'window' },
    ]);
  });

  it('that are names of an object’s inner workings match nothing', () => {
    const match = matchColumns(
      ['__proto__', 'constructor', 'toString'],
      'windows',
      JSON.parse('{"__proto__":"toString"}') as Record<string, string>,
    );
    expect(match.fields.size).toBe(0);
    expect(match.unmatched).toEqual([0, 1, 2]);
  });

  it('can name a unit', () => {
    expect(
      ['duration (hrs)', 'from km', 'minutes', 'window', 'chainage [m]'].map(unitOfHeading),
    ).toEqual(['hours', 'km', 'minutes', undefined, 'm']);
  });
});

describe('the kind of a table', () => {
  it.each(tableKinds)('is told from our headings of %s', (kind) => {
    expect(guessKind(headingsOf(kind))).toBe(kind);
  });

  it('is told from synonyms too', () => {
    expect(guessKind(['Possession', 'From time', 'To time', 'Lines blocked'])).toBe('windows');
    expect(guessKind(['Task', 'Duration', 'Depends on', 'Window'])).toBe('work');
    expect(guessKind(['Resource', 'Qty'])).toBe('resources');
    expect(guessKind(['Headcode', 'Passing time'])).toBe('trains');
  });

  it('is not told where needed columns are missing', () => {
    expect(guessKind(['colour', 'size'])).toBeUndefined();
  });
});

describe('a column chosen by its place', () => {
  const columns = ['id', 'from', 'to', 'to', '', 'title'];

  it('is the one, though its heading is blank or there twice', () => {
    const match = matchColumns(columns, 'windows', { end: 'column 4', lines: 'column 5' });
    expect([match.fields.get('end'), match.fields.get('lines')]).toEqual([3, 4]);
    expect(match.mapFaults).toEqual([]);
  });

  it('is called so where its heading does not tell it apart, and by its heading else', () => {
    expect(columns.map((_, at) => entryOf(columns, at))).toEqual([
      'id',
      'from',
      'column 3',
      'column 4',
      'column 5',
      'title',
    ]);
  });

  it('is none where an empty text says so, and is missed where it is needed', () => {
    const match = matchColumns(columns, 'windows', { title: '', window: '' });
    expect(match.fields.has('title')).toBe(false);
    expect(match.unmatched).toContain(5);
    expect(match.missing).toContain('window');
  });
});

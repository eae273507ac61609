import { describe, expect, it } from 'vitest';
import { rulesFrom } from '../../../src/tables/index.js';

const base = { schema: 1, name: 'Two tracks' };
const faults = (rules: unknown): unknown[] =>
  rulesFrom(typeof rules === 'string' ? rules : JSON.stringify(rules), 'rules.json').faults.map(
    ({ code, column }) => [code, column],
  );

describe('a rule set in JSON', () => {
  it('with a name alone deducts nothing', () => {
    expect(rulesFrom(JSON.stringify(base), 'rules.json')).toEqual({
      rules: { ...base, leadIn: [], leadOut: [], margin: { minutes: 0 }, curfews: [] },
      faults: [],
    });
  });

  it.each<[string, unknown, unknown[]]>([
    ['no name', { schema: 1 }, [['rules-entry-missing', 'name']]],
    ['another version', { ...base, schema: 2 }, [['rules-word-not-known', 'schema']]],
    ['an unknown entry', { ...base, leadin: [] }, [['rules-entry-not-known', 'leadin']]],
    [
      'text for minutes',
      { ...base, leadIn: [{ step: 'a', minutes: '30' }] },
      [['rules-wrong-kind', 'leadIn[0].minutes']],
    ],
    [
      'half a minute',
      { ...base, margin: { minutes: 0.5 } },
      [['rules-wrong-kind', 'margin.minutes']],
    ],
    [
      'minutes below nothing',
      { ...base, margin: { minutes: -1 } },
      [['rules-out-of-range', 'margin.minutes']],
    ],
    [
      'too many minutes',
      { ...base, margin: { minutes: 1e9 } },
      [['rules-out-of-range', 'margin.minutes']],
    ],
    [
      'an unknown day',
      { ...base, curfews: [{ name: 'c', from: '23:00', to: '07:00', days: ['sat', 'Sunday'] }] },
      [['rules-word-not-known', 'curfews[0].days[1]']],
    ],
    [
      'no time of day',
      { ...base, curfews: [{ name: 'c', from: '23', to: '24:00' }] },
      [['rules-not-a-time', 'curfews[0].from']],
    ],
    [
      'a blank step',
      { ...base, leadOut: [{ step: '', minutes: 1 }] },
      [['rules-entry-blank', 'leadOut[0].step']],
    ],
    ['a list for the whole', [], [['rules-wrong-kind', undefined]]],
    [
      'two faults',
      { ...base, zone: 1, margin: {} },
      [
        ['rules-wrong-kind', 'zone'],
        ['rules-entry-missing', 'margin.minutes'],
      ],
    ],
    ['an unknown zone', { ...base, zone: 'Ondrith' }, [['zone-not-known', 'zone']]],
    [
      'a step alongside itself',
      { ...base, leadIn: [{ step: 'a', minutes: 1, alongside: 'a' }] },
      [['alongside-in-a-circle', 'leadIn[0].alongside']],
    ],
    [
      'a step twice',
      {
        ...base,
        leadIn: [
          { step: 'a', minutes: 1 },
          { step: 'a', minutes: 2 },
        ],
      },
      [['step-twice', 'leadIn[1].step']],
    ],
    [
      'low above likely',
      { ...base, leadIn: [{ step: 'a', minutes: 10, low: 11 }] },
      [['spread-out-of-order', 'leadIn[0].low']],
    ],
    [
      'high below likely',
      { ...base, leadIn: [{ step: 'a', minutes: 10, high: 9 }] },
      [['spread-out-of-order', 'leadIn[0].high']],
    ],
    [
      'an entry __proto__',
      '{"schema":1,"name":"x","__proto__":{"margin":{"minutes":5}}}',
      [['rules-key-refused', undefined]],
    ],
    [
      'an entry constructor deep inside',
      '{"schema":1,"name":"x","margin":{"minutes":1,"constructor":1}}',
      [['rules-key-refused', undefined]],
    ],
    ['no JSON', 'leadIn: 30', [['rules-not-json', undefined]]],
    ['nothing', '', [['rules-not-json', undefined]]],
  ])('with %s is refused', (_, rules, expected) => {
    expect(faults(rules)).toEqual(expected);
    expect(
      rulesFrom(typeof rules === 'string' ? rules : JSON.stringify(rules), 'f').rules,
    ).toBeUndefined();
  });

  it('with a step alongside one that is not there is used, with a warning', () => {
    const read = rulesFrom(
      JSON.stringify({ ...base, leadIn: [{ step: 'a', minutes: 1, alongside: 'b' }] }),
      'rules.json',
    );
    expect(read.rules?.leadIn).toHaveLength(1);
    expect(read.faults).toMatchObject([
      { code: 'alongside-not-known', severity: 'warning', column: 'leadIn[0].alongside' },
    ]);
  });

  it('with an entry twice is refused, as one of the two would be lost', () => {
    const { faults: found } = rulesFrom(
      '{"schema":1,"name":"x",\n"margin":{"minutes":30},\n"margin":{"minutes":45}}',
      'rules.json',
    );
    expect(found).toMatchObject([{ code: 'rules-entry-twice', line: 3 }]);
  });

  it('says on which line it stops being JSON', () => {
    const { faults: found } = rulesFrom('{\n  "schema": 1,\n  "name": x\n}', 'rules.json');
    expect(found).toMatchObject([{ code: 'rules-not-json', line: 3, file: 'rules.json' }]);
  });

  it('with a step alongside none is used in series, and says so', () => {
    const text = JSON.stringify({
      schema: 1,
      name: 'x',
      leadIn: [{ step: 'a', minutes: 1, alongside: 'b' }],
    });
    const { rules, faults } = rulesFrom(text, 'rules.json');
    expect(rules?.leadIn).toHaveLength(1);
    expect(faults).toMatchObject([
      { code: 'alongside-not-known', severity: 'warning', column: 'leadIn[0].alongside' },
    ]);
  });
});

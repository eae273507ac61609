import { afterEach, beforeEach, describe, expect, it, vi, type MockInstance } from 'vitest';
import * as Y from 'yjs';
import { closings, type Limits } from '../../../src/share/index.js';
import { desk, until, type Desk } from './support/desk.js';
import { serve, type Running } from './support/server.js';
import { message, stranger } from './support/stranger.js';

let printed: MockInstance[];
beforeEach(() => {
  printed = (['error', 'warn', 'log'] as const).map((name) =>
    vi.spyOn(console, name).mockImplementation(() => undefined),
  );
});
afterEach(() => {
  for (const item of printed) item.mockRestore();
});

const planOf = (name: string): Y.Doc => {
  const doc = new Y.Doc();
  doc.getMap('values').set('name', name);
  return doc;
};

/** A server with a plan, and a desk that is in it. */
async function shared(limits: Partial<Limits> = {}): Promise<Running & { readonly one: Desk }> {
  const running = await serve({ limits });
  const one = desk(running.address, running.tokens.write, 'plan-1', { doc: planOf('Bridge deck') });
  await until(() => one.provider.isSynced, 'the first desk');
  return { ...running, one };
}

/** Work goes on: what the first desk writes comes to a new reader, and nothing was printed. */
async function goesOn({ address, tokens, one }: Awaited<ReturnType<typeof shared>>): Promise<void> {
  const text = `still here ${one.values.size}`;
  one.values.set('check', text);
  const other = desk(address, tokens.read);
  await until(() => other.values.get('check') === text, 'the work of others goes on');
  expect(other.values.get('name')).toBe('Bridge deck');
  expect(printed.flatMap((spy) => spy.mock.calls)).toEqual([]);
}

const updateOf = (write: (doc: Y.Doc) => void): Uint8Array => {
  const doc = new Y.Doc();
  write(doc);
  return Y.encodeStateAsUpdate(doc);
};

describe('tokens', () => {
  const wrong = (write: string): readonly (readonly [string, string])[] => [
    ['missing', ''],
    ['cut', write.slice(0, -1)],
    ['longer', `${write}x`],
    ['of another server', `write-${'A'.repeat(43)}`],
    ['long', 'x'.repeat(150)],
    ['of odd characters', '\u0000\ud83d\ude82"; drop'],
  ];
  it('refuses a wrong one in words, and says nothing of the plan', async () => {
    const running = await shared();
    for (const [what, token] of wrong(running.tokens.write)) {
      const other = desk(running.address, token);
      await until(() => other.refused() !== '', what);
      expect(other.refused(), what).toBe(closings.token.reason);
      expect(other.values.size, what).toBe(0);
      other.end();
    }
    await goesOn(running);
  });

  it('shuts who gives none in time', async () => {
    const running = await shared({ tokenWithin: 100 });
    expect(await (await stranger(running.address)).shut()).toEqual(closings.late);
    await goesOn(running);
  });

  it('takes no change before one is given', async () => {
    const running = await shared();
    const other = await stranger(running.address);
    other.send(
      message.update(
        'plan-1',
        updateOf((doc) => doc.getMap('values').set('x', 'in')),
      ),
    );
    other.send(message.token('plan-1', 'wrong'));
    expect(await other.shut()).toEqual(closings.token);
    expect(running.one.values.has('x')).toBe(false);
    await goesOn(running);
  });

  it('puts none of them where others read them', async () => {
    const running = await shared();
    const other = desk(running.address, 'write-wrong');
    await until(() => other.refused() !== '', 'refused');
    const all = JSON.stringify([running.said, printed.flatMap((spy) => spy.mock.calls)]);
    for (const token of [...Object.values(running.tokens), 'write-wrong'])
      expect(all).not.toContain(token);
  });
});

describe('a reader', () => {
  it('sees every change and can make none', async () => {
    const running = await shared();
    const reader = desk(running.address, running.tokens.read);
    await until(() => reader.values.get('name') === 'Bridge deck', 'the plan');
    expect(reader.provider.authorizedScope).toBe('readonly');
    running.one.values.set('N3', '22:30');
    await until(() => reader.values.get('N3') === '22:30', 'a change');
    reader.values.set('more', 'mine');
    await until(() => reader.closed() !== undefined, 'shut');
    expect(reader.closed()).toEqual(closings.reader);
    reader.end();
    await goesOn(running);
    expect(running.one.values.toJSON()).not.toHaveProperty('more');
  });

  it('cannot begin a plan', async () => {
    const running = await shared();
    const reader = desk(running.address, running.tokens.read, 'plan-9');
    await until(() => reader.refused() !== '', 'refused');
    expect(reader.refused()).toBe(closings.noPlan.reason);
    await goesOn(running);
  });

  it('cannot name plans in the list', async () => {
    const running = await shared();
    const list = desk(running.address, running.tokens.write, 'plans-of-this-server');
    await until(() => list.doc.getMap('plans').size === 1, 'the list');
    list.doc.getMap('plans').set('plan-1', 'Wrong name');
    await until(() => list.closed() !== undefined, 'shut');
    list.end();
    const second = desk(running.address, running.tokens.write, 'plans-of-this-server');
    await until(() => second.provider.isSynced, 'the list again');
    expect(second.doc.getMap('plans').toJSON()).toEqual({ 'plan-1': 'Bridge deck' });
    await goesOn(running);
  });
});

describe('messages', () => {
  const broken: readonly (readonly [string, Uint8Array | string])[] = [
    ['empty', new Uint8Array()],
    ['a text', 'hello'],
    ['one byte', Uint8Array.of(255)],
    ['random bytes', Uint8Array.from({ length: 300 }, (_, k) => (k * 97) % 256)],
    ['a name that is none', message.token('../plan', 'x')],
    ['a name that reaches into a program', message.text('__proto__', 9, 'x')],
    ['a long name', message.token('x'.repeat(5000), 'x')],
    ['a kind that is none', message.text('plan-1', 77, 'x')],
    ['a note to everybody', message.text('plan-1', 6, 'read this')],
  ];
  it('refuses a broken one, before a token and after', async () => {
    const running = await shared();
    for (const withToken of [false, true])
      for (const [what, bytes] of broken) {
        const other = await stranger(running.address);
        if (withToken) other.send(message.token('plan-1', running.tokens.write));
        other.send(bytes);
        expect((await other.shut()).code, `${what}, ${withToken}`).toBe(closings.broken.code);
      }
    await goesOn(running);
  });

  it('refuses a change that is cut, damaged, or misses what it builds on', async () => {
    const running = await shared();
    const whole = updateOf((doc) => doc.getMap('values').set('x', 'a'.repeat(90)));
    const doc = new Y.Doc();
    doc.getMap('values').set('x', '1');
    const before = Y.encodeStateVector(doc);
    doc.getMap('values').set('x', '2');
    const changes = [
      whole.slice(0, 20),
      whole.map((byte) => byte ^ 85),
      Y.encodeStateAsUpdate(doc, before),
    ];
    for (const change of changes) {
      const other = await stranger(running.address);
      other.send(message.token('plan-1', running.tokens.write));
      other.send(message.update('plan-1', change));
      expect(await other.shut()).toEqual(closings.broken);
    }
    await goesOn(running);
  });

  it('refuses a change that leaves no plan, and takes the next good one', async () => {
    const running = await shared();
    const changes = [
      updateOf((doc) => doc.getMap('values').set('long', 'x'.repeat(101))),
      updateOf((doc) => doc.getMap('other').set('x', '1')),
    ];
    for (const change of changes) {
      const other = await stranger(running.address);
      other.send(message.token('plan-1', running.tokens.write));
      other.send(message.update('plan-1', change));
      expect(await other.shut()).toEqual(closings.notPlan);
    }
    expect(running.one.values.toJSON()).toEqual({ name: 'Bridge deck' });
    const good = desk(running.address, running.tokens.write);
    await until(() => good.provider.isSynced, 'a good desk');
    good.values.set('good', 'yes');
    await until(() => running.one.values.get('good') === 'yes', 'the good change');
    await goesOn(running);
  });

  it('refuses a huge one', async () => {
    const running = await shared({ message: 10_000 });
    const other = await stranger(running.address);
    other.send(new Uint8Array(10_001));
    expect((await other.shut()).code).toBe(closings.large.code);
    await goesOn(running);
  });

  it('refuses who sends too many, or too much', async () => {
    for (const limits of [
      { messagesAtOnce: 40, messagesPerSecond: 1 },
      { bytesAtOnce: 4000, bytesPerSecond: 1 },
    ]) {
      const running = await shared(limits);
      const other = await stranger(running.address);
      for (let k = 0; k < 60; k += 1) other.send(message.token('plan-1', 'x'.repeat(120)));
      expect([closings.flood.code, closings.token.code]).toContain((await other.shut()).code);
      const writer = await stranger(running.address);
      writer.send(message.token('plan-1', running.tokens.write));
      for (let k = 0; k < 60; k += 1)
        writer.send(
          message.update(
            'plan-1',
            updateOf((doc) => doc.getMap('values').set('x', 'y'.repeat(99))),
          ),
        );
      expect(await writer.shut()).toEqual(closings.flood);
      await goesOn(running);
    }
  });
});

describe('connections', () => {
  it('refuses a page of another site', async () => {
    const running = await shared();
    for (const origin of [
      'https://elsewhere.example',
      'null',
      'http://localhost.elsewhere.example',
      'http://127.0.0.1.elsewhere.example:80',
    ])
      expect(await (await stranger(running.address, origin)).shut(), origin).toEqual(
        closings.origin,
      );
    expect(running.said[0]).toContain('https://elsewhere.example');
    for (const origin of ['http://localhost:4173', 'http://127.0.0.1:8080', 'http://[::1]:1'])
      await until(
        () => desk(running.address, running.tokens.read, 'plan-1', { origin }).doc !== null,
        origin,
      );
    const own = desk(running.address, running.tokens.read, 'plan-1', {
      origin: 'http://localhost:4173',
    });
    await until(() => own.provider.isSynced, 'a page of this machine');
    await goesOn(running);
  });

  it('lets in a page of a site that was named', async () => {
    const running = await serve({ origins: ['https://desk.example'] });
    const one = desk(running.address, running.tokens.write, 'plan-1', {
      doc: planOf('Bridge deck'),
      origin: 'https://desk.example',
    });
    await until(() => one.provider.isSynced, 'the named site');
  });

  it('refuses more than it takes, and takes the next when one has gone', async () => {
    const running = await shared({ connections: 3 });
    const second = await stranger(running.address);
    const third = desk(running.address, running.tokens.read);
    await until(() => third.provider.isSynced, 'the third');
    expect(await (await stranger(running.address)).shut()).toEqual(closings.full);
    third.end();
    second.send('broken');
    await second.shut();
    await goesOn(running);
  });

  it('begins no more plans than it keeps', async () => {
    const running = await shared({ plans: 3 });
    const more = ['a', 'b', 'c', 'd'].map((name) =>
      desk(running.address, running.tokens.write, name, { doc: planOf(name) }),
    );
    await until(() => more.some((item) => item.refused() !== ''), 'one refused');
    expect(more.find((item) => item.refused() !== '')!.refused()).toBe(closings.plans.reason);
    await goesOn(running);
  });
});

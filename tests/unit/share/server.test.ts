import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { listName } from '../../../src/share/index.js';
import { desk, until } from './support/desk.js';
import { serve } from './support/server.js';

const planOf = (name: string): Y.Doc => {
  const doc = new Y.Doc();
  doc.getMap('values').set('name', name);
  return doc;
};

describe('the server that carries plans', () => {
  it('brings what is written at one desk to another', async () => {
    const { address, tokens } = await serve();
    const one = desk(address, tokens.write, 'plan-1', { doc: planOf('Bridge deck') });
    const other = desk(address, tokens.write);
    await until(() => other.values.get('name') === 'Bridge deck', 'the plan at the other desk');
    other.values.set('N3', '22:30');
    await until(() => one.values.get('N3') === '22:30', 'the change at the first desk');
  });

  it('keeps plans when it is stopped and started again', async () => {
    const first = await serve();
    const one = desk(first.address, first.tokens.write, 'plan-1', { doc: planOf('Bridge deck') });
    await until(() => one.provider.isSynced, 'the plan taken');
    one.values.set('N3', '22:30');
    await until(() => !one.provider.hasUnsyncedChanges, 'the change taken');
    one.end();
    await first.sharing.close();
    const second = await serve({ folder: first.folder });
    expect(second.tokens).toEqual(first.tokens);
    const other = desk(second.address, second.tokens.read);
    await until(() => other.values.get('N3') === '22:30', 'the change from the disk');
    expect(other.values.toJSON()).toEqual({ name: 'Bridge deck', N3: '22:30' });
  });

  it('lists its plans by name', async () => {
    const { address, tokens } = await serve();
    desk(address, tokens.write, 'plan-1', { doc: planOf('Bridge deck') });
    const two = desk(address, tokens.write, 'plan-2', { doc: planOf('Wires') });
    const list = desk(address, tokens.read, listName).doc.getMap('plans');
    await until(() => list.size === 2, 'both plans in the list');
    expect(list.toJSON()).toEqual({ 'plan-1': 'Bridge deck', 'plan-2': 'Wires' });
    two.values.set('name', 'Overhead line');
    await until(() => list.get('plan-2') === 'Overhead line', 'the new name in the list');
  });

  it('listens on this machine alone', async () => {
    const { sharing } = await serve();
    const elsewhere = Object.values(networkInterfaces())
      .flatMap((all) => all ?? [])
      .filter((item) => !item.internal && item.family === 'IPv4');
    for (const { address } of elsewhere) {
      const answer = await new Promise<string>((resolve) => {
        const socket = connect({ port: sharing.port, host: address });
        socket.once('connect', () => resolve('connected'));
        socket.once('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? ''));
      });
      expect(answer).toBe('ECONNREFUSED');
    }
    const page = await fetch(`http://127.0.0.1:${sharing.port}/`);
    expect(page.status).toBe(426);
    expect(await page.text()).toContain('from a desk');
  });
});

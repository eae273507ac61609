// Two servers joined by a Redis. Run by `npm run trust` where the machine has a Redis; SHARE_REDIS names its address.
import { expect, it } from 'vitest';
import * as Y from 'yjs';
import { joinedBy, listName } from '../../../src/share/index.js';
import { desk, until } from './support/desk.js';
import { serve } from './support/server.js';

const redis = process.env['SHARE_REDIS'];

it.runIf(redis)('has one plan at desks of two servers, and keeps it at both', async () => {
  const first = await serve({ extensions: [await joinedBy(redis!)] });
  const second = await serve({ tokens: first.tokens, extensions: [await joinedBy(redis!)] });
  const doc = new Y.Doc();
  doc.getMap('values').set('name', 'Bridge deck');
  const name = `plan-${doc.clientID}`;
  const one = desk(first.address, first.tokens.write, name, { doc });
  await until(() => one.provider.isSynced, 'the first desk');
  const other = desk(second.address, first.tokens.write, name);
  await until(() => other.values.get('name') === 'Bridge deck', 'the plan at the other server');
  other.values.set('N3', '22:30');
  await until(() => one.values.get('N3') === '22:30', 'the change at the first server');
  one.values.set('N4', '23:00');
  await until(() => other.values.get('N4') === '23:00', 'the change at the other server');
  for (const { address } of [first, second]) {
    const list = desk(address, first.tokens.read, listName).doc.getMap('plans');
    await until(() => list.get(name) === 'Bridge deck', 'its name in both lists');
  }
  one.end();
  other.end();
  await Promise.all([first.sharing.close(), second.sharing.close()]);
  for (const { folder } of [first, second]) {
    const alone = await serve({ folder, tokens: first.tokens });
    const late = desk(alone.address, first.tokens.read, name);
    await until(() => late.values.get('N4') === '23:00', 'the plan from the disk of each');
    expect(late.values.toJSON()).toEqual({ name: 'Bridge deck', N3: '22:30', N4: '23:00' });
  }
});

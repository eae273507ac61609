import { MessageChannel } from 'node:worker_threads';
import {
  createInlineEngine,
  createPortEngine,
  serve,
  type Port,
} from '../../../src/engine/index.js';
import { engineContract } from '../../helpers/engine-contract.js';

engineContract('inline', createInlineEngine);

engineContract('port', () => {
  const { port1, port2 } = new MessageChannel();
  serve(port2 as unknown as Port, createInlineEngine());
  return createPortEngine(port1 as unknown as Port, () => port1.close());
});

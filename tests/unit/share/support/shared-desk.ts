import { afterEach } from 'vitest';
import WebSocket from 'ws';
import { PlanLink } from '../../../../components/share/plan-link.js';
import type { OpenPlan } from '../../../../src/plan/index.js';

const open: PlanLink[] = [];
const sockets: { readonly desk: object; readonly socket: WebSocket }[] = [];
afterEach(() => {
  for (const link of open.splice(0)) link.leave();
});

export interface SharedDesk {
  readonly plan: OpenPlan;
  readonly link: PlanLink;
  /** Cuts the line, as a network that is gone does. */
  cut(): void;
  /** Lets it be tried again. */
  mend(): void;
}

/** A desk as far as sharing goes: an open plan and its link, over a line that can be cut. */
export function sharedDesk(
  plan: OpenPlan,
  id: string,
  server: { readonly address: string; readonly token: string },
): SharedDesk {
  const desk = {};
  let isCut = false;
  class Line extends WebSocket {
    constructor(address: string) {
      super(isCut ? 'ws://127.0.0.1:9' : address);
      this.on('error', () => undefined);
      sockets.push({ desk, socket: this });
    }
  }
  const link = new PlanLink(plan, id, server, () => undefined, { socket: Line, pause: [20, 50] });
  open.push(link);
  return {
    plan,
    link,
    cut: () => {
      isCut = true;
      for (const socket of sockets) if (socket.desk === desk) socket.socket.terminate();
    },
    mend: () => {
      isCut = false;
    },
  };
}

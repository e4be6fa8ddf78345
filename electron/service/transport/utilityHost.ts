import { RPCHandler } from '@orpc/server/message-port';
import type { ParentPort } from 'electron';
import { newSession } from '../people/session.ts';
import { doorkeepers } from './doors.ts';
import type { Host } from './host.ts';
import type { FromService, ToService } from './processMessages.ts';

/** Served in the app's utility process, as the product runs: each window hands over a port of its own. */
export function utilityHost(parent: ParentPort): Host {
  const say = (message: FromService) => parent.postMessage(message);
  return {
    serve: ({ router }) => {
      const handler = new RPCHandler(router, { clientInterceptors: doorkeepers });
      parent.on('message', ({ data, ports: [port] }) => {
        if (saidIn(data) !== 'open' || !port) return;
        handler.upgrade(port, { context: { door: 'window', session: newSession('window') } });
        port.start();
      });
      say({ say: 'ready' });
      return undefined;
    },
    refuse: (refusal) => say({ say: 'refused', refusal }),
    onEnd: (end) => {
      parent.on('message', ({ data }) => {
        if (saidIn(data) === 'end') end();
      });
    },
    stop: () => undefined,
  };
}

/** What the app's process says in a message; null for what is no word of its. */
const saidIn = (data: unknown): ToService['say'] | null =>
  typeof data === 'object' && data !== null && 'say' in data && (data.say === 'open' || data.say === 'end')
    ? data.say
    : null;

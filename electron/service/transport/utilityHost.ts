import { RPCHandler } from '@orpc/server/message-port';
import type { ParentPort } from 'electron';
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
        if ((data as ToService).say !== 'open' || !port) return;
        handler.upgrade(port, { context: { door: 'window' } });
        port.start();
      });
      say({ say: 'ready' });
      return undefined;
    },
    refuse: (refusal) => say({ say: 'refused', refusal }),
    onEnd: (end) => {
      parent.on('message', ({ data }) => {
        if ((data as ToService).say === 'end') end();
      });
    },
    stop: () => undefined,
  };
}

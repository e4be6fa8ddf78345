import { RPCHandler } from '@orpc/server/message-port';
import { newSession } from '../people/session.ts';
import { doorkeepers } from './doors.ts';
import type { Host } from './host.ts';
import type { FromService, ToService } from './processMessages.ts';

type NumberedPort = { readonly receive: (data: unknown) => void; readonly close: () => void };

/** The part of a forked process this needs: its line to the parent. */
export type ForkedProcess = Pick<NodeJS.Process, 'send' | 'on'>;

/** Served in a forked Node: the parent keeps the real ports, numbers them and passes their data on. */
export function forkedHost(self: ForkedProcess): Host {
  const ports = new Map<number, NumberedPort>();
  const say = (message: FromService) => void self.send?.(message);
  return {
    serve: ({ router }) => {
      const handler = new RPCHandler(router, { clientInterceptors: doorkeepers });
      const opened = (port: number): NumberedPort => {
        const hear = new Set<(data: unknown) => void>();
        const left = new Set<() => void>();
        const wire = {
          onMessage: { addListener: (listener: (data: unknown) => void) => void hear.add(listener) },
          onDisconnect: { addListener: (listener: () => void) => void left.add(listener) },
          postMessage: (data: unknown) => say({ say: 'data', port, data }),
        };
        handler.upgrade(wire, { context: { door: 'window', session: newSession('window') } });
        return {
          receive: (data) => hear.forEach((listener) => void listener(data)),
          close: () => left.forEach((listener) => void listener()),
        };
      };
      self.on('message', (message: ToService) => {
        if (message.say === 'data') {
          const port = ports.get(message.port) ?? opened(message.port);
          ports.set(message.port, port);
          port.receive(message.data);
        }
        if (message.say === 'closed') {
          ports.get(message.port)?.close();
          ports.delete(message.port);
        }
      });
      say({ say: 'ready' });
      return undefined;
    },
    // Whoever is told may end at once: wait until the sentence is on its way.
    refuse: (refusal) =>
      new Promise((done) => {
        if (!self.send) return done();
        self.send({ say: 'refused', refusal } satisfies FromService, () => done());
      }),
    onEnd: (end) => {
      self.on('disconnect', end);
      self.on('message', (message: ToService) => {
        if (message.say === 'end') end();
      });
    },
    stop: () => undefined,
  };
}

import { fork } from 'node:child_process';
import type { MessagePortMain } from 'electron';
import type { StartRefusal } from '../service/backing.ts';
import type { FromService, ToService } from '../service/transport/processMessages.ts';
import type { ServiceProcess } from './serviceProcess.ts';

/**
 * Starts the service in a Node of its own, where Electron's cannot load the database.
 * Such a process cannot be handed a port: ports are numbered here and their data passed on both ways.
 */
export function forkedService(node: string, script: string, args: readonly string[]): ServiceProcess {
  const child = fork(script, args, { execPath: node, execArgv: [], serialization: 'advanced' });
  const ports = new Map<number, MessagePortMain>();
  const opened = Promise.withResolvers<StartRefusal | undefined>();
  const gone = Promise.withResolvers<void>();
  let last = 0;
  const say = (message: ToService) => {
    if (child.connected) child.send(message);
  };
  child.on('message', (message: FromService) => {
    if (message.say === 'ready') opened.resolve(undefined);
    if (message.say === 'refused') opened.resolve(message.refusal);
    if (message.say === 'data') ports.get(message.port)?.postMessage(message.data);
  });
  const end = () => {
    opened.resolve({ refused: 'service-ended', path: script });
    for (const port of ports.values()) port.close();
    ports.clear();
    gone.resolve();
  };
  child.once('exit', end).once('error', end);
  return {
    opened: opened.promise,
    gone: gone.promise,
    connect: (port) => {
      const number = ++last;
      ports.set(number, port);
      port.on('message', ({ data }) => say({ say: 'data', port: number, data }));
      port.on('close', () => {
        ports.delete(number);
        say({ say: 'closed', port: number });
      });
      port.start();
    },
    askToEnd: () => say({ say: 'end' }),
    kill: () => void child.kill('SIGKILL'),
  };
}

import { utilityProcess } from 'electron';
import type { StartRefusal } from '../service/backing.ts';
import type { FromService, ToService } from '../service/transport/processMessages.ts';
import type { ServiceProcess } from './serviceProcess.ts';

/** Starts the service as the app's utility process. Only after the app is ready: earlier, Electron crashes. */
export function utilityService(script: string, args: readonly string[]): ServiceProcess {
  const child = utilityProcess.fork(script, [...args], { serviceName: 'knowngood-service', stdio: 'inherit' });
  const opened = Promise.withResolvers<StartRefusal | undefined>();
  const gone = Promise.withResolvers<void>();
  const say = (message: ToService, ports?: Electron.MessagePortMain[]) => child.postMessage(message, ports);
  child.on('message', (message: FromService) => {
    if (message.say === 'ready') opened.resolve(undefined);
    if (message.say === 'refused') opened.resolve(message.refusal);
  });
  child.once('exit', () => {
    opened.resolve({ refused: 'service-ended', path: script });
    gone.resolve();
  });
  return {
    opened: opened.promise,
    gone: gone.promise,
    connect: (port) => say({ say: 'open' }, [port]),
    askToEnd: () => say({ say: 'end' }),
    kill: () => void child.kill(),
  };
}

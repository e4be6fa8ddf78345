import type { MessagePortMain } from 'electron';
import type { StartRefusal } from '../service/backing.ts';
import type { ServiceProcess } from './serviceProcess.ts';

/** A service that ends by itself sooner than this after its start has failed; the second in a row is the last. */
const LIVED_MS = 10_000;
const FAILURES = 2;
/** What sealing and closing may take before the process is ended all the same; commands are kept either way. */
const PATIENCE_MS = 5_000;

export type ServiceKeeper = {
  /** Hands a window's port to the service that runs now, or the next one. */
  readonly connect: (port: MessagePortMain) => void;
  /** Ends the service in order. */
  readonly end: () => Promise<void>;
};

/**
 * Keeps one service running: one that ends by itself is started anew. One that cannot open is told of, and so is one
 * that ends soon after its start a second time.
 *
 * @param start Starts a service process.
 * @param cannotStart Called with the reason when there is no service and will be none.
 */
export function keepService(
  start: () => ServiceProcess,
  cannotStart: (refusal: StartRefusal) => void,
  now: () => number = Date.now,
): ServiceKeeper {
  let ending = false;
  let failures = 0;
  let service: ServiceProcess;
  const run = () => {
    const since = now();
    const current = start();
    service = current;
    void current.opened.then((refusal) => {
      if (refusal && !ending) cannotStart(refusal);
      void current.gone.then(() => {
        if (ending || refusal) return;
        failures = now() - since >= LIVED_MS ? 0 : failures + 1;
        if (failures < FAILURES) run();
        else cannotStart({ refused: 'service-ended', path: '' });
      });
    });
  };
  run();
  return {
    connect: (port) => {
      const current = service;
      void current.opened.then((refusal) => {
        if (refusal) port.close();
        else current.connect(port);
      });
    },
    end: async () => {
      ending = true;
      service.askToEnd();
      const limit = setTimeout(() => service.kill(), PATIENCE_MS);
      await service.gone;
      clearTimeout(limit);
    },
  };
}

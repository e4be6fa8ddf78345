import type { MessagePortMain } from 'electron';
import type { StartRefusal } from '../service/backing.ts';

/** The service as the main process knows it: a process to which windows' ports are handed. */
export type ServiceProcess = {
  /** How the opening came out: `undefined` when the service is ready, else why not. */
  readonly opened: Promise<StartRefusal | undefined>;
  /** Resolves when the process is gone, for whatever reason. */
  readonly gone: Promise<void>;
  /** Hands a window's port over. */
  readonly connect: (port: MessagePortMain) => void;
  /** Asks for an orderly end: heads sealed, data closed. */
  readonly askToEnd: () => void;
  /** Ends it whatever it is doing. */
  readonly kill: () => void;
};

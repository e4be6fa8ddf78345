import type { Backing, StartRefusal } from '../backing.ts';

/** Whoever started the service, and how it is served and told about the opening. */
export type Host = {
  /** Serves the procedures until the end, or says why it cannot. */
  readonly serve: (backing: Backing) => StartRefusal | undefined | Promise<StartRefusal | undefined>;
  /** Says why the shop's data could not be opened. */
  readonly refuse: (refusal: StartRefusal) => void | Promise<void>;
  /** Calls back when the host is gone or asks for the end. */
  readonly onEnd: (end: () => void) => void;
  /** Stops serving: nothing is answered from here on. */
  readonly stop: () => void | Promise<void>;
};

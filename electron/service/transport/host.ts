import type { Backing, OpenRefusal } from '../backing.ts';

/** Whoever started the service, and how it is served and told about the opening. */
export type Host = {
  /** Serves the procedures until the end, or says why it cannot. */
  readonly serve: (backing: Backing) => OpenRefusal | undefined | Promise<OpenRefusal | undefined>;
  /** Says why the shop's data could not be opened. */
  readonly refuse: (refusal: OpenRefusal) => void | Promise<void>;
  /** Calls back when the host is gone or asks for the end. */
  readonly onEnd: (end: () => void) => void;
  /** Stops serving: nothing is answered from here on. */
  readonly stop: () => void | Promise<void>;
};

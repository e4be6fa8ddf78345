import type { RPCHandler } from '@orpc/server/node';
import type { OpenRefusal as ShopRefusal } from '../../db/index.ts';
import type { Caller } from './transport/doors.ts';

/** Everything behind the doors: the procedures, and what must happen hourly and at the end. */
export type Backing = {
  /** Whatever procedures answer such a caller: the very thing that the library's handlers take. */
  readonly router: ConstructorParameters<typeof RPCHandler<Caller>>[0];
  /** Seals the heads of the chains in the key file. */
  readonly sealHeads: () => void | Promise<void>;
  readonly close: () => void | Promise<void>;
};

/** Why there is no service. The shop's data was left as it is. */
export type StartRefusal =
  | ShopRefusal
  | { readonly refused: 'port-not-free' | 'service-ended' | 'unknown'; readonly path: string };

export type Opened =
  | { readonly ok: true; readonly backing: Backing }
  | { readonly ok: false; readonly refusal: StartRefusal };

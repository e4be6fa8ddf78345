import type { StartRefusal } from '../backing.ts';

/**
 * What the app's main process and the service say to each other. A utility process is handed real ports with `open`;
 * a forked Node cannot be, so there the ports are numbered and their data passed on.
 */
export type ToService =
  | { readonly say: 'open' }
  | { readonly say: 'data'; readonly port: number; readonly data: unknown }
  | { readonly say: 'closed'; readonly port: number }
  | { readonly say: 'end' };

export type FromService =
  | { readonly say: 'ready' }
  | { readonly say: 'refused'; readonly refusal: StartRefusal }
  | { readonly say: 'data'; readonly port: number; readonly data: unknown };

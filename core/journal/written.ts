import type { EpochMs } from '../time.ts';

/** What `apply` needs of an entry beyond its body: when it was written and by whom. */
export type Written = { readonly at: EpochMs; readonly by: string };

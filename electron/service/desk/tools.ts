import type { TracingDoor } from '../../../core/bench/tracingDoor.ts';
import type { Asking } from '../../../core/commands/kernel/asking.ts';
import type { View } from '../../../core/entries/view.ts';

/** What a decision is given beside the view, but for who asks and when; tracing goes by the shop's own fault model. */
export type Tools = Omit<Asking, 'at' | 'by' | 'tracing'> & { readonly tracing: (shop: View['shop']) => TracingDoor };

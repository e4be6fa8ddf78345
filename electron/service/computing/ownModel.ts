import type { Shop } from '../../../core/job/shop.ts';

/** What makes a shop's fault model its own: little enough to send, where the model itself is not. */
export type OwnModel = Pick<Shop, 'models' | 'learnt'>;

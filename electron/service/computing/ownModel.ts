import type { Shop } from '../../../core/job/shop.ts';

/** What makes a shop's fault model its own: little enough to send, where the model itself is not. */
export type ModelOfShop = Pick<Shop, 'models' | 'learnt'>;

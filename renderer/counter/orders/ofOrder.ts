import type { Order } from '../../../core/job/orders/order.ts';
import type { OfJob } from '../job/sheetOf.ts';

export type OfOrder = OfJob & { readonly order: Order };

import { jobsNow } from './jobsNow.ts';
import { jobsThatClosed } from './jobsThatClosed.ts';
import { namedBlobs } from './namedBlobs.ts';
import { orders } from './orders.ts';
import { papers } from './papers.ts';
import { partStays } from './partStays.ts';
import { partsOfShop } from './partsOfShop.ts';
import type { Projection } from './projection.ts';
import { recognition } from './recognition.ts';
import { slotFills } from './slotFills.ts';
import { tags } from './tags.ts';

/** Every projection, in the order they see an entry. A new one is written beside these and added here. */
export const PROJECTIONS: readonly Projection[] = [
  partStays,
  partsOfShop,
  slotFills,
  tags,
  papers,
  jobsNow,
  recognition,
  namedBlobs,
  orders,
  jobsThatClosed,
];

import type { Draft } from '../../core/journal/entry.ts';
import { draft } from './shopFolder.ts';

/** Entries of an order, with only what a test is about. */

export const partOrdered = (job: string, order: string): Draft =>
  draft(`job:${job}`, 'part-ordered', {
    order,
    what: 'a board',
    supplier: 'Harbour Parts',
    priceMinor: 8000,
    due: null,
    question: null,
  });

export const partReceived = (job: string, order: string, as = 'ordered'): Draft =>
  draft(`job:${job}`, 'part-received', { order, as, part: null });

export const orderCancelled = (job: string, order: string): Draft =>
  draft(`job:${job}`, 'order-cancelled', { order, why: 'Not needed.', drops: false });

export const returnSettled = (job: string, order: string, as = 'refused'): Draft =>
  draft(`job:${job}`, 'return-settled', { order, as, minor: 4000 });

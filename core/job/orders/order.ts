import { z } from 'zod';
import { afterDays } from '../../calendar.ts';
import { type PartId, partIdShape, type QuestionId, questionIdShape } from '../../ids.ts';
import type { Shaped } from '../../shape.ts';
import { type EpochMs, epochMsShape } from '../../time.ts';
import type { AgreedLine } from '../agreedLine.ts';

/** As what it came. `late` stands in early journals alone: that it came after its day shows in the days. */
export const CAME_AS = ['ordered', 'wrong', 'dead', 'late', 'dearer', 'owners-own'] as const;
export type CameAs = (typeof CAME_AS)[number];

/** What was asked of a supplier. */
export const orderPlacedShape = z.strictObject({
  order: z.string(),
  what: z.string(),
  supplier: z.string(),
  /** What it costs the owner. */
  priceMinor: z.number(),
  due: epochMsShape.nullable(),
  question: questionIdShape.nullable(),
  /** The line of the owner's answer that it fills. */
  line: z.string().optional(),
  /** Days in which the supplier takes it back, from the day it came; null: not agreed. */
  returnDays: z.number().nullable().optional(),
  /** What the supplier gives for the old part, if it is sent to them within so many days. */
  core: z.strictObject({ part: partIdShape, minor: z.number(), days: z.number() }).optional(),
});
export type OrderPlaced = Shaped<typeof orderPlacedShape>;

/** How the return of a part ended. */
export const RETURNED_AS = ['refunded', 'replaced', 'refused'] as const;

/** An order as its job tells it. */
export type Order = OrderPlaced & {
  readonly placedAt: EpochMs;
  readonly received: CameAs | null;
  readonly part: PartId | null;
  readonly cameAt: EpochMs | null;
  /** What it costs the owner as it came. */
  readonly cameMinor: number;
  /** The answer that agreed to it as it came, where that is not the one it was ordered by. */
  readonly agreedBy: QuestionId | null;
  readonly sentBackAt: EpochMs | null;
  /** `minor`: what was paid back, or, refused, what the part cost the shop. */
  readonly settled: {
    readonly as: (typeof RETURNED_AS)[number];
    readonly minor: number;
    readonly at: EpochMs;
  } | null;
  readonly cancelled: string | null;
};

/** Where an order stands, and so whose move it is. */
export type OrderState =
  | 'on-the-way'
  | 'came'
  | 'needs-word'
  | 'to-go-back'
  | 'gone-back'
  | 'settled'
  | 'cancelled'
  | 'owners-own';

/** An order that has just been placed. */
export const placed = (order: OrderPlaced, at: EpochMs): Order => ({
  ...order,
  placedAt: at,
  received: null,
  part: null,
  cameAt: null,
  cameMinor: order.priceMinor,
  agreedBy: null,
  sentBackAt: null,
  settled: null,
  cancelled: null,
});

/** Where an order stands: on its way, here, to be agreed to again, or on its way back. */
export function orderState(order: Order): OrderState {
  if (order.cancelled !== null) return 'cancelled';
  if (order.settled) return 'settled';
  if (order.sentBackAt !== null) return 'gone-back';
  switch (order.received) {
    case null:
      return 'on-the-way';
    case 'wrong':
    case 'dead':
      return 'to-go-back';
    case 'owners-own':
      return 'owners-own';
    case 'dearer':
      return order.agreedBy === null ? 'needs-word' : 'came';
    default:
      return 'came';
  }
}

/** What is bought or may yet be: neither called off, nor sent back, nor the owner's own. */
export const isLive = (order: Order): boolean => ['on-the-way', 'came', 'needs-word'].includes(orderState(order));

/** The line of the owner's answer that an order fills; undefined where nobody asked for it, or the word was taken back. */
export function lineOf(job: { readonly agreedLines: readonly AgreedLine[] }, order: Order): AgreedLine | undefined {
  const question = order.agreedBy ?? order.question;
  return job.agreedLines.find(
    (line) =>
      line.question === question &&
      line.what === (order.line ?? order.what) &&
      (line.part === null || line.part === order.part),
  );
}

/** Does an order wait for a word, or may it be given one: it came, is here, and is not fitted yet? */
export const mayBeAgreed = (job: { readonly agreedLines: readonly AgreedLine[] }, order: Order): boolean =>
  ['came', 'needs-word'].includes(orderState(order)) && lineOf(job, order)?.fitted !== true;

/** Until when the supplier takes it back; null before it came, and where no days were agreed. */
export const returnBy = (order: Order, zone: string): EpochMs | null => daysOn(order.cameAt, order.returnDays, zone);

/** Until when the old part has to be with the supplier; null where there is none, or the new one has not come. */
export const coreBy = (order: Order, zone: string): EpochMs | null => daysOn(order.cameAt, order.core?.days, zone);

const daysOn = (at: EpochMs | null, days: number | null | undefined, zone: string): EpochMs | null =>
  at === null || days === null || days === undefined ? null : afterDays(at, days, zone);

/** Why a part that the owner brought counts as unproved until it was tried. */
export const OWNERS_OWN = 'owners-own';

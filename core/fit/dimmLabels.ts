import type { Slot, SlotPlan } from '../custody/slot.ts';

/** A memory slot as a machine's own report lists it. What the report says is told, not seen. */
export type MemoryRecord = {
  readonly locator: string | null;
  readonly bank: string | null;
  readonly filled: boolean;
  /** `DDR4`, or `null` when the report does not say. */
  readonly type: string | null;
};

/** Channel letter and place within the channel, counted from 1, or `null` where the label names neither. */
export type DimmLabel = { readonly channel: string; readonly place: number };

/**
 * Channel and place of each record by the board's own labels (`ChannelA-DIMM0`, `DIMM_A2`, `DIMM 1` in bank
 * `P0 CHANNEL B`). `null` for all unless every label names both, there are at least two channels, every channel has
 * as many slots, and no two labels are the same: a row of slots called A0 to A5 names no channel.
 */
export function dimmLabels(records: readonly MemoryRecord[]): readonly DimmLabel[] | null {
  const labels = records.flatMap(({ locator, bank }) => readLabel(locator ?? '', bank ?? '') ?? []);
  if (records.length === 0 || labels.length < records.length) return null;
  const channels = [...new Set(labels.map(({ channel }) => channel))].toSorted();
  const numbersOf = (channel: string) =>
    labels
      .filter((label) => label.channel === channel)
      .map(({ number }) => number)
      .toSorted((a, b) => a - b);
  const [first, ...others] = channels.map(numbersOf);
  if (!first || others.length === 0 || new Set(first).size !== first.length) return null;
  if (others.some((numbers) => numbers.length !== first.length || new Set(numbers).size !== numbers.length))
    return null;
  // Some firmware counts places from 0, some from 1: the place is the rank within the channel.
  return labels.map(({ channel, number }) => ({
    channel: String.fromCharCode(65 + channels.indexOf(channel)),
    place: numbersOf(channel).indexOf(number) + 1,
  }));
}

function readLabel(locator: string, bank: string): { channel: string; number: number } | null {
  const controller = /controller\s*(\d)/i.exec(locator)?.[1] ?? '';
  const inLocator =
    /channel[\s_-]*([a-h])[\s_-]*(?:dimm)?[\s_-]*(\d)(?!\d)/i.exec(locator) ??
    /(?:^|[^a-z])(?:dimm)?[\s_-]*([a-h])[\s_-]*(\d)$/i.exec(locator);
  if (inLocator?.[1] && inLocator[2])
    return { channel: controller + inLocator[1].toUpperCase(), number: Number(inLocator[2]) };
  const inBank = /channel[\s_-]*([a-h])/i.exec(bank)?.[1];
  const number = /(\d)(?!\d)\s*$/.exec(locator)?.[1];
  return inBank && number ? { channel: controller + inBank.toUpperCase(), number: Number(number) } : null;
}

/** DIMM slots from a machine's own report: named by channel and place where its labels allow, else as listed. */
export function dimmSlotsFromReport(records: readonly MemoryRecord[]): SlotPlan {
  const labels = dimmLabels(records);
  const gaps = records.length === 0 ? ['dimm-slots'] : labels ? [] : ['memory-channels', 'dimm-order'];
  const slots = records.map((record, index): Slot => {
    const label = labels?.[index];
    const attributes = { ...(record.locator && { label: record.locator }), ...(record.bank && { bank: record.bank }) };
    const common = { takes: 'dimm', source: 'own-report', attributes } as const;
    if (label) {
      const before = (other: DimmLabel) =>
        other.channel < label.channel || (other.channel === label.channel && other.place < label.place);
      return {
        ...common,
        id: `${label.channel}${label.place}`,
        order: (labels ?? []).filter(before).length + 1,
        channel: label.channel,
      };
    }
    const twice = records.filter((other) => other.locator === record.locator).length > 1;
    return { ...common, id: !record.locator || twice ? `DIMM ${index + 1}` : record.locator, order: index + 1 };
  });
  const ids = new Set(slots.map((slot) => slot.id));
  return {
    slots: ids.size === slots.length ? slots : slots.map((slot) => ({ ...slot, id: `DIMM ${slot.order}` })),
    gaps,
  };
}

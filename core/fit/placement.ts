import counted from '../../assets/fit/placement.json' with { type: 'json' };
import { type DimmLabel, dimmLabels, type MemoryRecord } from './dimmLabels.ts';

type Pattern = 'one-channel' | 'second-of-each' | 'first-of-each' | 'mixed';

/** How often machines of this memory were found placed so: `machines` of `of`. Never a share of a shop's own customers. */
export type Counted = {
  readonly machines: number;
  readonly of: number;
  readonly memory: string | null;
  readonly source: string;
};

/**
 * What can be said of where the modules sit, and what it rests on.
 * `manual`: the board's manual, read by a person: the only ground for right or wrong.
 * `labels`: the board's own labels name channel and place. That all modules share one channel is then sure, whatever
 * the manual prefers; first or second of each channel is not: look in the manual.
 * `order`: only the order of the records is known, and order alone proves nothing.
 */
export type Placement =
  | {
      readonly evidence: 'manual';
      readonly says: 'as-manual' | 'not-as-manual';
      readonly asks: readonly string[];
      readonly filled: readonly string[];
    }
  | { readonly evidence: 'labels'; readonly says: 'one-channel'; readonly counted: Counted | null }
  | {
      readonly evidence: 'labels';
      readonly says: 'look-in-manual';
      readonly pattern: Exclude<Pattern, 'one-channel'>;
      readonly counted: Counted | null;
    }
  | { readonly evidence: 'labels'; readonly says: 'all-channels-used' | 'one-module' | 'every-slot' }
  | { readonly evidence: 'order'; readonly says: 'proves-nothing'; readonly counted: Counted | null }
  | { readonly evidence: 'none'; readonly says: 'no-slots-listed' | 'no-module-listed' };

/**
 * @param records Memory slots in the order of the machine's own report, or of a census from the processor on.
 * @param manual Slot ids (`A2`) the board's manual asks for with this many modules, where someone has read it; needs labels.
 */
export function placementOf(records: readonly MemoryRecord[], manual?: readonly string[]): Placement {
  if (records.length === 0) return { evidence: 'none', says: 'no-slots-listed' };
  const filled = records.map((record, index) => ({ record, index })).filter(({ record }) => record.filled);
  if (filled.length === 0) return { evidence: 'none', says: 'no-module-listed' };
  const labels = dimmLabels(records);
  if (!labels)
    return {
      evidence: 'order',
      says: 'proves-nothing',
      counted: countedByOrder(
        records.length,
        filled.map(({ index }) => index + 1),
      ),
    };
  const inside = filled.map(({ index }) => labels[index]).filter((label) => label !== undefined);
  const memory = filled.map(({ record }) => record.type).find((type) => type !== null) ?? null;
  if (manual) return byManual(inside, manual);
  return byLabels(labels, inside, memory);
}

function byManual(inside: readonly DimmLabel[], asks: readonly string[]): Placement {
  const filled = inside.map(({ channel, place }) => `${channel}${place}`).toSorted();
  const same = filled.length === asks.length && asks.every((id) => filled.includes(id));
  return { evidence: 'manual', says: same ? 'as-manual' : 'not-as-manual', asks, filled };
}

function byLabels(labels: readonly DimmLabel[], inside: readonly DimmLabel[], memory: string | null): Placement {
  if (inside.length === labels.length) return { evidence: 'labels', says: 'every-slot' };
  if (inside.length === 1) return { evidence: 'labels', says: 'one-module' };
  const pair = labels.length === 4 && inside.length === 2;
  const channels = new Set(inside.map(({ channel }) => channel));
  if (channels.size === 1)
    return { evidence: 'labels', says: 'one-channel', counted: pair ? countedByLabel('one-channel', memory) : null };
  if (!pair) return { evidence: 'labels', says: 'all-channels-used' };
  const [a, b] = inside.map(({ place }) => place);
  const pattern = a !== b ? 'mixed' : a === 2 ? 'second-of-each' : 'first-of-each';
  return { evidence: 'labels', says: 'look-in-manual', pattern, counted: countedByLabel(pattern, memory) };
}

function countedByLabel(pattern: Pattern, memory: string | null): Counted | null {
  const row = counted.byLabel.find((each) => each.memory === memory);
  return row ? { machines: row[pattern], of: row.machines, memory, source: counted.source } : null;
}

function countedByOrder(slots: number, records: readonly number[]): Counted | null {
  if (slots !== 4 || records.length !== 2) return null;
  const row = counted.byOrder.filled.find((each) => each.records.every((record, index) => record === records[index]));
  return row ? { machines: row.machines, of: counted.byOrder.machines, memory: null, source: counted.source } : null;
}

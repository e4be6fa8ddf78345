import limits from '../../../assets/readings/limits.json' with { type: 'json' };
import type { Remark } from '../../custody/machineReport.ts';
import type { MemoryRecord } from '../../fit/dimmLabels.ts';
import { sameSpeed } from '../../fit/moduleName.ts';
import { type Placement, placementOf } from '../../fit/placement.ts';
import { keysOf } from '../../table.ts';
import { say } from '../../text/say.ts';
import type { ModuleReading } from '../reading.ts';
import type { ReadingWords } from '../words.ts';

/** What the memory of a machine gives reason to say. Nothing on placement while a slot is not known to be filled or empty. */
export function memoryRemarks(slots: readonly ModuleReading[], words: ReadingWords): readonly Remark[] {
  const modules = slots.map((slot, index) => ({ slot, index })).filter(({ slot }) => slot.filled);
  return [
    ...(slots.some(({ filled }) => filled === null) ? [] : placementRemarks(slots, words)),
    ...mixedRemarks(
      modules.map(({ slot }) => slot),
      words,
    ),
    ...modules.flatMap(({ slot, index }) => speedRemarks(slot, index, words)),
  ];
}

function placementRemarks(slots: readonly ModuleReading[], words: ReadingWords): readonly Remark[] {
  const records = slots.map(
    ({ locator, bank, filled, type }): MemoryRecord => ({ locator, bank, filled: filled === true, type }),
  );
  const placement = placementOf(records);
  const inside = slots.filter(({ filled }) => filled);
  const fills = { n: inside.length, slots: inside.map(({ locator, bank }) => locator ?? bank ?? '?').join(', ') };
  const says = saysOf(placement, slots, words, fills);
  if (says === null) return [];
  const counted = 'counted' in placement ? placement.counted : null;
  const evidence =
    placement.evidence === 'order' ? 'order' : placement.says === 'look-in-manual' ? 'labels' : 'one-channel';
  return [
    {
      about: 'memory.slots',
      says,
      why: counted ? countedInWords(counted, words.evidence[evidence], words) : `${words.evidence[evidence]}.`,
      source: counted?.source ?? limits.sources['one-channel'],
    },
  ];
}

function saysOf(
  placement: Placement,
  slots: readonly ModuleReading[],
  words: ReadingWords,
  fills: Readonly<Record<string, string | number>>,
): string | null {
  if (placement.evidence === 'order') {
    const records = slots.flatMap(({ filled }, index) => (filled ? [index + 1] : []));
    const odd = slots.length === 4 && records.length === 2 && ODD_PAIRS.has(records.join());
    return odd ? say(words.placement.order, { records: records.join(' and '), of: slots.length }) : null;
  }
  if (placement.says === 'one-channel' || placement.says === 'one-module')
    return say(words.placement[placement.says], fills);
  if (placement.says !== 'look-in-manual' || placement.pattern === 'second-of-each') return null;
  // On DDR3 boards the first places are as usual as the second: nothing to remark.
  const usual = placement.counted !== null && placement.counted.machines * 3 > placement.counted.of;
  return usual || (placement.pattern === 'first-of-each' && placement.counted === null)
    ? null
    : say(words.placement[placement.pattern], fills);
}

/** Records of four that stand side by side or apart: what is left when every other one is taken out. */
const ODD_PAIRS: ReadonlySet<string> = new Set(['1,2', '3,4', '2,3', '1,4']);

type Counted = NonNullable<Extract<Placement, { readonly evidence: 'order' }>['counted']>;

const countedInWords = (counted: Counted, evidence: string, words: ReadingWords): string =>
  say(words.placement.counted, {
    evidence,
    memory: counted.memory === null ? '' : say(words.placement['of-memory'], { memory: counted.memory }),
    machines: counted.machines,
    total: counted.of,
  });

function mixedRemarks(modules: readonly ModuleReading[], words: ReadingWords): readonly Remark[] {
  const what = keysOf(words.mixed).filter((field) => {
    const values = new Set(modules.map((module) => module[field]).filter((value) => value !== null));
    return values.size > 1;
  });
  if (what.length === 0) return [];
  const says = say(words.remark['mixed-modules'].says, { what: what.map((field) => words.mixed[field]).join(', ') });
  return [{ about: 'memory.slots', says, why: words.remark['mixed-modules'].why, source: limits.sources.mixed }];
}

/** Firmware that gives the clock instead of the data rate says half of it: that is no slower module. */
function speedRemarks(slot: ModuleReading, index: number, words: ReadingWords): readonly Remark[] {
  const { speedMTs: rated, configuredMTs: configured } = slot;
  if (rated === null || configured === null || configured >= rated) return [];
  if (sameSpeed(configured, rated) || sameSpeed(configured * 2, rated)) return [];
  const says = say(words.remark['below-rated'].says, {
    slot: slot.locator ?? slot.bank ?? String(index + 1),
    configured,
    rated,
  });
  return [
    {
      about: `memory.slots[${index}].configuredMTs`,
      says,
      why: words.remark['below-rated'].why,
      source: limits.sources['smbios-speed'],
    },
  ];
}

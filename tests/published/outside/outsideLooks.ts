import { type Interval, wilson } from '../../../core/figures/interval.ts';
import { GROUPS } from '../../../core/tracing/live/groups.ts';
import type { Fault, FaultModel } from '../../../core/tracing/live/types.ts';

/** Fault types of the 2021 exercise on open repair data (ORDS) that a desktop's own parts and software can have. */
const TYPES = [
  'Power/battery',
  'Configuration',
  'Performance',
  'Operating system',
  'Boot',
  'Internal storage',
  'System board',
  'Ports/slots/connectors',
  'Overheating',
  'Virus/malware',
] as const;
export type FaultType = (typeof TYPES)[number];

/** One row of the table: what the priors imply, what was counted, and why they may differ. */
export type Look = {
  readonly what: string;
  readonly implied: number;
  readonly count: number;
  readonly of: number;
  readonly interval: Interval;
  /** Does the implied share lie within the counted one's interval? */
  readonly agrees: boolean;
  readonly reason: string;
};

const BY_ID: Readonly<Record<string, FaultType>> = {
  'boot-order': 'Boot',
  'boot-records': 'Boot',
  'store-mode': 'Boot',
  'disk-locked': 'Operating system',
  'os-damaged': 'Operating system',
  'os-driver': 'Operating system',
  'os-load': 'Performance',
  'drive-full': 'Performance',
  malware: 'Virus/malware',
  'gpu-driver': 'Configuration',
  'sleep-state': 'Configuration',
  'board-port': 'Ports/slots/connectors',
  'board-net': 'Ports/slots/connectors',
  'radio-aerial': 'Ports/slots/connectors',
  'ext-device': 'Ports/slots/connectors',
};
const BY_PART: { readonly [part in Fault['part']]?: FaultType } = {
  mains: 'Power/battery',
  supply: 'Power/battery',
  plugs: 'Power/battery',
  'front-panel': 'Power/battery',
  settings: 'Configuration',
  software: 'Operating system',
  drive: 'Internal storage',
  board: 'System board',
  processor: 'System board',
  cooler: 'Overheating',
  fan: 'Overheating',
};

/** Which fault type a volunteer would have given; null for what those types have no place for (memory, card, cables). */
export const typeOf = (fault: Fault): FaultType | null => BY_ID[fault.id] ?? BY_PART[fault.part] ?? null;

/** Share of each key among the faults that have one, every symptom group weighing the same. */
export function impliedMix<Key extends string>(
  model: FaultModel,
  keyOf: (fault: Fault) => Key | null,
): ReadonlyMap<Key, number> {
  const mix = new Map<Key, number>();
  for (const group of GROUPS) {
    const all = model.faults.reduce((sum, fault) => sum + (fault.weights[group] ?? 0), 0);
    for (const fault of model.faults) {
      const key = keyOf(fault);
      if (key !== null) mix.set(key, (mix.get(key) ?? 0) + (fault.weights[group] ?? 0) / all);
    }
  }
  const total = [...mix.values()].reduce((a, b) => a + b, 0);
  return new Map([...mix].map(([key, share]) => [key, share / total]));
}

/** Why community events and a shop differ, type by type. Our own reading, no source. */
const REASONS: Readonly<Record<FaultType, string>> = {
  'Power/battery': 'a dead machine is the plainest thing to carry to an event; one group of thirteen is "no reaction"',
  Configuration: 'volunteers file drivers, updates and use under it; the model keeps settings of the board apart',
  Performance: 'slowness is brought to free events; few pay a shop for it, and one group of thirteen is "slow"',
  'Operating system': 'events see old systems out of support; a shop’s customers have them renewed elsewhere',
  Boot: 'volunteers file by when it fails, the model by what is at fault: much of it is drive or system there',
  'Internal storage': 'few tools for drives at an event: many of these are filed Unknown or Boot',
  'System board': 'an event cannot prove a board; what is not proved is filed Unknown',
  'Ports/slots/connectors': 'the model has a group of its own for ports, weighed as much as any other',
  Overheating: 'the model has a group of its own for heat and noise; at events it is filed by what it leads to',
  'Virus/malware': 'three records in all: too few to say',
};

/** The mix that the priors imply beside desktop records with a fault type (Unknown and what is no desktop part left out). */
export function typeLooks(model: FaultModel, csv: string): readonly Look[] {
  // Only the plain first five columns are read; the free text behind them may hold anything.
  const types = [...csv.matchAll(/^[\w-]+_\d+,[^,\n]*,[A-Z]{3},\d+,([^,\n]+),/gm)].map((row) => row[1]);
  const of = types.filter((type) => TYPES.some((one) => one === type)).length;
  const implied = impliedMix(model, typeOf);
  return TYPES.map((what) =>
    look(what, implied.get(what) ?? 0, types.filter((type) => type === what).length, of, REASONS[what]),
  );
}

function look(what: string, implied: number, count: number, of: number, reason: string): Look {
  const interval = wilson(count, of);
  return { what, implied, count, of, interval, agrees: implied >= interval.low && implied <= interval.high, reason };
}

/**
 * Processor against memory among machines with a failure of either. Counted: 2,096 and 255 of 973,537 (Nightingale,
 * Douceur and Orgovan, EuroSys 2011; table in Jones, ESEUR, eurosys84).
 */
export function processorLook(model: FaultModel): Look {
  const mix = impliedMix(model, ({ part }) => (part === 'processor' || part === 'dimm' ? part : null));
  const reason =
    'the field counts crashes that the system blames on the processor itself (overclocking and heat among them), of memory only one-bit errors in the kernel; a bench counts parts it replaces or reseats';
  return look('processor among processor and memory', mix.get('processor') ?? 0, 2096, 2096 + 255, reason);
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

/** The table for people: implied, counted with its 95 % interval, and the reason where they disagree. */
export const lookLine = ({ what, implied, count, of, interval, agrees, reason }: Look): string =>
  `| ${what} | ${percent(implied)} | ${count} of ${of}: ${percent(count / of)} (${percent(interval.low)} to ${percent(interval.high)}) | ${agrees ? 'agree' : reason} |`;

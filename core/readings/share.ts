import type { EpochMs } from '../time.ts';
import type { MachineReading } from './reading.ts';
import { saidOf } from './readText.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/** One identifying value of a reading: to be sealed, and kept only with the owner's consent. */
export type Identifier = { readonly of: string; readonly serial: string };

/** Every serial number a reading has, with what it is of. */
export const identifiersOf = (reading: MachineReading): readonly Identifier[] => [
  ...Object.entries(reading.serials).map(([of, serial]) => ({ of, serial })),
  ...listed('processors', reading.processors),
  ...listed('memory.slots', reading.slots),
  ...listed('drives', reading.drives),
];

const listed = (name: string, of: readonly { readonly serial: string | null }[]): readonly Identifier[] =>
  of.flatMap(({ serial }, index) => (serial === null ? [] : [{ of: `${name}[${index}]`, serial }]));

/** The same reading without what tells this machine and its parts from others of their model. */
export const withoutIdentifiers = (reading: MachineReading): MachineReading => ({
  ...reading,
  serials: {},
  processors: reading.processors.map((one) => ({ ...one, serial: null })),
  slots: reading.slots.map((one) => ({ ...one, serial: null })),
  drives: reading.drives.map((one) => ({ ...one, serial: null })),
});

/** The form to share: the plain form with slots for cards and temperatures; nothing in it tells one machine from others of its model. */
export function shareForm(reading: MachineReading, words: ReadingWords = ENGLISH, asOf: EpochMs | null = null) {
  const bare = withoutIdentifiers(reading);
  return { ...saidOf(bare, words, asOf), cardSlots: bare.cardSlots, temperatures: bare.temperatures };
}

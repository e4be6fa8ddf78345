import type { Reading } from './reading.ts';

/** One identifying value of a reading: to be sealed, and kept only with the owner's consent. */
export type Identifier = { readonly of: string; readonly serial: string };

/** Every serial number a reading has, with what it is of. */
export const identifiersOf = (reading: Reading): readonly Identifier[] => [
  ...Object.entries(reading.serials).map(([of, serial]) => ({ of, serial })),
  ...listed('processors', reading.processors),
  ...listed('memory.slots', reading.slots),
  ...listed('drives', reading.drives),
];

const listed = (name: string, of: readonly { readonly serial: string | null }[]): readonly Identifier[] =>
  of.flatMap(({ serial }, index) => (serial === null ? [] : [{ of: `${name}[${index}]`, serial }]));

/** The form to share: the same reading without what tells this machine and its parts from others of their model. */
export const withoutIdentifiers = (reading: Reading): Reading => ({
  ...reading,
  serials: {},
  processors: reading.processors.map((one) => ({ ...one, serial: null })),
  slots: reading.slots.map((one) => ({ ...one, serial: null })),
  drives: reading.drives.map((one) => ({ ...one, serial: null })),
});

/** How something of ours or theirs was lost or hurt here. Common practice, no source. */
export const MISHAPS = [
  'dropped',
  'static',
  'wrong-plug',
  'bent-pin',
  'overtightened',
  'wet',
  'too-hot',
  'their-fault-hurt-it',
  'mislaid',
  'lent-and-not-back',
  'in-transit',
  'other',
] as const;

export type Mishap = (typeof MISHAPS)[number];

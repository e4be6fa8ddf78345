/** What in a step can hurt people, data, or a part. */
export const CAUTIONS = [
  'mains',
  'static',
  'hot',
  'sharp',
  'lift',
  'cooler',
  'cell',
  'write',
  'disk-key',
  'borrowed',
  'pins',
  'firmware',
  'network',
  'fumes',
  'live',
  'supply-shut',
  'eyes',
  'battery',
  'gloves',
  'chip-volts',
] as const;
export type Caution = (typeof CAUTIONS)[number];

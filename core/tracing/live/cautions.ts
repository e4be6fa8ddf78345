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
] as const;
export type Caution = (typeof CAUTIONS)[number];

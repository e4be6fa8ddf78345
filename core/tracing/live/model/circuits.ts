/** What a fault sits in. A fault shows only while everything it sits in is in circuit. */
export const CIRCUITS = [
  'mains',
  'cord',
  'supply',
  'plugs',
  'aux-lead',
  'front-leads',
  'board',
  'cell',
  'processor',
  'socket',
  'cooler',
  'dimm',
  'slots',
  'card',
  'card-slot',
  'riser',
  'picture-cable',
  'screen',
  'case',
  'hubs',
  'fans',
  'drive',
  'drive-leads',
  'drive-port',
  'add-in',
  'aerial',
  'outside',
  'settings',
  'software',
  'home',
] as const;
export type Circuit = (typeof CIRCUITS)[number];

/** The bit set of some circuits. */
export function maskOf(circuits: readonly Circuit[]): number {
  return circuits.reduce((mask, circuit) => mask | (1 << CIRCUITS.indexOf(circuit)), 0);
}

/** The circuits of a bit set. */
export function circuitsOf(mask: number): readonly Circuit[] {
  return CIRCUITS.filter((_, at) => (mask & (1 << at)) !== 0);
}

/** Lines of `lscpu` that are read, and what its translations call them. */
export type LscpuField = 'architecture' | 'cpus' | 'threads' | 'cores' | 'sockets' | 'vendor' | 'model';

const LABELS: Readonly<Record<LscpuField, readonly string[]>> = {
  architecture: ['Architecture'],
  cpus: ['CPU(s)'],
  threads: ['Thread(s) per core'],
  cores: ['Core(s) per socket'],
  sockets: ['Socket(s)'],
  vendor: ['Vendor ID'],
  model: ['Model name'],
};

const FIELD_OF: ReadonlyMap<string, LscpuField> = new Map(
  Object.entries(LABELS).flatMap(([field, labels]) => labels.map((label) => [label, field as LscpuField] as const)),
);

/** The field a label stands for, colon and surrounding space left out of account. */
export const lscpuField = (label: string): LscpuField | undefined => FIELD_OF.get(label.replace(/\s*:\s*$/, '').trim());

/** The architecture stands first in every `lscpu`, in every language. */
export function beginsLscpu(line: string): boolean {
  const colon = line.indexOf(':');
  return colon > 0 && colon < 40 && lscpuField(line.slice(0, colon)) === 'architecture';
}

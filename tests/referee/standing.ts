import type { Logged, RefereeState } from './state.ts';

type Told = Partial<Omit<RefereeState, 'log'>> & { readonly log?: readonly string[] };

const entry = (text: string): Logged => {
  const [step = '', outcome = ''] = text.split(':');
  return { step, outcome };
};

/** A machine as it stands on the bench, everything agreed to that a sheet usually has; a log of `step:outcome`. */
export const standing = ({ log = [], ...known }: Told): RefereeState => ({
  told: [],
  changed: [],
  seen: [],
  machine: {},
  agreed: ['open', 'own-parts-in', 'start-own', 'read', 'copy', 'write', 'risk'],
  ...known,
  log: log.map(entry),
});

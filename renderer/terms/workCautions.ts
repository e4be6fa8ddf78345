import deeds from '../../assets/fault-model/deeds.json';
import type { WorkKind } from '../../core/job/work.ts';
import { cautionText } from './terms.ts';

const OTHERS: Readonly<Record<string, { readonly cautions: readonly string[] }>> = deeds.others;

/** The cautions at work that is no step, as it is said: its own, else those of its kind. */
export const workCautions = (kind: WorkKind, what: string): readonly string[] =>
  (deeds.work.find(({ id }) => id === what)?.cautions ?? OTHERS[kind]?.cautions ?? []).map(cautionText);

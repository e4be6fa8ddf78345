import symptoms from '../../assets/words/en/symptoms.json';
import tracing from '../../assets/words/en/tracing.json';
import type { Work } from '../../core/job/work.ts';

type Named = { readonly name: string; readonly does: string };
type Texts = Readonly<Record<string, string>>;

const STEPS: Readonly<Record<string, Named>> = tracing.steps;
const FAULTS: Readonly<Record<string, { readonly name: string; readonly plain: string }>> = tracing.faults;
const SYMPTOMS: Readonly<Record<string, { readonly bench: string }>> = symptoms;
const TASKS: Texts = tracing.tasks;
const of = (texts: Texts) => (id: string) => texts[id] ?? id;

/** The trade's terms in the bench's language; an id without words shows itself, so that it is seen and mended. */
export const stepName = (id: string): string => STEPS[id]?.name ?? taskName(id);
export const stepDoes = (id: string): string => STEPS[id]?.does ?? id;
export const faultName = (id: string): string => FAULTS[id]?.name ?? id;
export const symptomName = (id: string): string => SYMPTOMS[id]?.bench ?? id;
export const outcomeName = of(tracing.outcomes);
const PLACES: Readonly<Record<string, { readonly name: string; readonly fine: string }>> = tracing.places;
/** A place that a look goes over, and what is said of it where nothing is found. */
export const placeName = (id: string): { readonly name: string; readonly fine: string } =>
  PLACES[id] ?? { name: id, fine: '' };
export const kindName = of(tracing.kinds);
export const cautionText = of(tracing.cautions);
export const needText = of(tracing.needs);
export const gateText = of(tracing.gates);
export const stateName = of(tracing.states);
export const reasonText = of(tracing.reasons);
export const notOfferedText = of(tracing.notOffered);
export const noLoanerText = of(tracing.noLoaner);
export const proofName = of(tracing.proofs);
export const taskName = (id: string): string => TASKS[id] ?? proofName(id);

/** What a piece of work is called: a step, a proof or a task. */
export const workName = ({ kind, what }: Pick<Work, 'kind' | 'what'>): string =>
  kind === 'step' ? stepName(what) : kind === 'proof' ? proofName(what) : taskName(what);

/** All that came of a piece of work, one by one; empty while it runs. */
export const cameNames = ({ outcome, also = [] }: Pick<Work, 'outcome' | 'also'>): readonly string[] =>
  outcome === null ? [] : [outcome, ...also].map(outcomeName);

export const SYMPTOM_IDS: readonly string[] = Object.keys(SYMPTOMS);
export const PROOF_IDS: readonly string[] = Object.keys(tracing.proofs);

import toCome from '../../assets/cases/steps-to-come.json' with { type: 'json' };
import aliases from '../../assets/fault-model/aliases.json' with { type: 'json' };
import faults from '../../assets/fault-model/faults.json' with { type: 'json' };
import steps from '../../assets/fault-model/steps.json' with { type: 'json' };
import consents from '../../assets/words/en/consents.json' with { type: 'json' };
import history from '../../assets/words/en/history.json' with { type: 'json' };
import symptoms from '../../assets/words/en/symptoms.json' with { type: 'json' };
import words from '../../assets/words/en/tracing.json' with { type: 'json' };

type Renamings = { readonly [old: string]: string };

const renamed = (renamings: Renamings, id: string) => (Object.hasOwn(renamings, id) ? (renamings[id] ?? id) : id);

const outcomesOf = new Map<string, ReadonlySet<string>>([
  ...Object.entries(toCome.steps).map(([id, step]): [string, ReadonlySet<string>] => [id, new Set(step.outcomes)]),
  ...steps.steps.map((step): [string, ReadonlySet<string>] => [step.id, new Set(step.outcomes.map(({ id }) => id))]),
]);

const stepNow = (id: string) => renamed(aliases.is, renamed(aliases.steps, id));
const known = (id: string) => outcomesOf.has(id) || outcomesOf.has(stepNow(id));

/** A step of the fault model or of the steps to come, under its own or an older id. */
export const isStep = known;

/** Whether a step can end so. A step that may come later has the outcomes the cases give it, until the model has it. */
export function isOutcome(step: string, outcome: string): boolean {
  const now = stepNow(step);
  const names = [
    outcome,
    renamed(aliases.outcomes, `${step}:${outcome}`),
    renamed(aliases.outcomes, `${now}:${outcome}`),
  ];
  return [step, now].some((id) => names.some((name) => outcomesOf.get(id)?.has(name)));
}

const idsOf = (...catalogues: readonly object[]) => new Set(catalogues.flatMap((one) => Object.keys(one)));

const FAULTS = new Set(faults.faults.map(({ id }) => id));
const PARTS = new Set(faults.faults.map(({ part }) => part));
const KINDS = idsOf(words.kinds);
const TERMS = idsOf(symptoms);
const HISTORIES = {
  changed: idsOf(history.changed),
  often: idsOf(history.often),
  onlyWhen: idsOf(history['only-when']),
};
const CONSENTS = idsOf(consents, words.needs);
const CAUTIONS = new Set([...Object.keys(aliases.cautions), ...Object.keys(words.cautions)]);

export const isFault = (id: string) => FAULTS.has(id);
/** Something a verdict can blame. */
export const isPart = (id: string) => PARTS.has(id);
/** A kind of part or equipment. */
export const isKind = (id: string) => KINDS.has(id);
export const isTerm = (id: string) => TERMS.has(id);
export const isHistory = (of: keyof typeof HISTORIES, id: string) => HISTORIES[of].has(id);
export const isConsent = (id: string) => CONSENTS.has(id);
export const isCaution = (id: string) => CAUTIONS.has(id);

/** What a case may call by one word instead of naming its steps. */
const STEP_KINDS = new Set([
  ...['mains-on', 'start', 'load', 'loaner-in', 'own-part-on-rig', 'suspect-put-back-under-power'],
  ...['write-to-owners-drive', 'owners-system-started', 'drive-worked', 'drive-powered'],
  ...['processor-out', 'cooler-off', 'board-out', 'supply-out', 'card-out', 'panel-open'],
  ...['settings-cleared', 'firmware-written', 'mains-pulled', 'part-ordered', 'sent-away'],
  ...['settled', 'settled:confirmed', 'settled:cured'],
]);

/** A kind of step, `loaner-in:card` and `own-part-on-rig:card` with the kind of part. */
export function isStepKind(word: string): boolean {
  if (STEP_KINDS.has(word)) return true;
  const [kind, part, ...more] = word.split(':');
  return (kind === 'loaner-in' || kind === 'own-part-on-rig') && isKind(part ?? '') && more.length === 0;
}

/** The shop's wall as the cases furnish it: kinds and loaner ids that may be said to be lacking or dead. */
const LOANERS = new Set(['S01', 'S02', 'S03', 'S04', 'S05', 'S07', 'S09', 'S11', 'S12', 'S13']);
export const isLoaner = (id: string) => LOANERS.has(id);

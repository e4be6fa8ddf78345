import fits from '../../assets/words/en/fits.json';
import refusals from '../../assets/words/en/refusals.json';
import type { Refusal } from '../../core/refusal.ts';
import { type RefusalWords, refusalNamed, wordsFor } from '../../core/text/wordsFor.ts';
import type { Owed } from '../../core/tracing/live/types.ts';
import { owedWords } from '../terms/owedWords.ts';
import { gateText, stepName } from '../terms/terms.ts';
import { shopRead } from './reads.ts';
import { queries } from './service.ts';

/** The service did not take the input's shape. */
export const isInputError = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'BAD_REQUEST';

/** The refusal that an error carries, with its facts; null where it is none. */
export function refusalIn(error: unknown): Refusal | null {
  const data = error instanceof Error && 'data' in error ? error.data : null;
  return data && typeof data === 'object' && 'refused' in data && typeof data.refused === 'string'
    ? { ...data, refused: refusalNamed(data.refused, refusals) }
    : null;
}

/** Words for a refusal, its moments by the shop's clock. */
export const wordsOfRefusal = (refusal: Refusal): RefusalWords =>
  wordsFor(
    { ...refusal, ...sinceWhen(refusal), ...factNamed(refusal), ...stepsNamed(refusal), ...gatesNamed(refusal) },
    refusals,
  );

/** Words for whatever came back instead of an answer. */
export function wordsOfError(error: unknown): RefusalWords {
  const data = error instanceof Error && 'data' in error ? error.data : null;
  const refusal = refusalIn(error);
  if (refusal) return wordsOfRefusal(refusal);
  if (isInputError(error)) return wordsFor({ refused: 'input-not-understood', fields: fieldsOf(data) }, refusals);
  return wordsFor({ refused: 'service-ended' }, refusals);
}

/** Since when somebody has a part, as a person of this shop reads it. */
function sinceWhen(data: object): { readonly since?: string } {
  const settings = queries.getQueryData(shopRead().queryKey)?.settings;
  if (!settings || !('since' in data) || typeof data.since !== 'number') return {};
  const { locale, zone } = settings;
  const whole = new Intl.DateTimeFormat(locale, { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
  return { since: whole.format(data.since) };
}

/** Steps of the bench by their names, where some have to come first. */
const stepsNamed = (data: object): { readonly steps?: readonly string[] } =>
  'steps' in data && Array.isArray(data.steps) ? { steps: data.steps.map((id) => stepName(String(id))) } : {};

/** Gates in the words of what comes first, and what is owed before a verdict. */
const gatesNamed = (data: object): { readonly gates?: readonly string[]; readonly owed?: readonly string[] } => ({
  ...('gates' in data && Array.isArray(data.gates) && { gates: data.gates.map(({ gate }) => gateText(String(gate))) }),
  ...('owed' in data && Array.isArray(data.owed) && { owed: data.owed.map((one: Owed) => owedWords(one, BY_COMMA)) }),
});
const BY_COMMA = { list: (all: readonly string[]) => all.join(', ') };

const FACTS: Readonly<Record<string, string>> = fits.attributes;

/** A fact of a part by its name, where one was refused. */
const factNamed = (data: object): { readonly attribute?: string } =>
  'attribute' in data && typeof data.attribute === 'string'
    ? { attribute: FACTS[data.attribute] ?? data.attribute }
    : {};

function fieldsOf(data: unknown): readonly string[] {
  const issues = data && typeof data === 'object' && 'issues' in data && Array.isArray(data.issues) ? data.issues : [];
  return issues.map(
    (issue: { readonly path?: readonly unknown[]; readonly message?: string }) =>
      `${(issue.path ?? []).join('.')}: ${issue.message ?? ''}`,
  );
}

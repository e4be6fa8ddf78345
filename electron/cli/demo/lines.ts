import words from '../../../assets/words/en/demo.json' with { type: 'json' };
import stages from '../../../assets/words/en/stages.json' with { type: 'json' };
import symptoms from '../../../assets/words/en/symptoms.json' with { type: 'json' };
import tracing from '../../../assets/words/en/tracing.json' with { type: 'json' };
import { formatMoney } from '../../../core/money/formatMoney.ts';
import { CURRENCIES } from '../../../core/money/minorDigits.ts';
import { oneOf } from '../../../core/table.ts';
import { fill } from '../../../core/text/wordsFor.ts';
import { STORY } from './story.ts';

type Lines = {
  [Line in keyof typeof words as (typeof words)[Line] extends string ? Line : never]: (typeof words)[Line];
};

/** A line of the story, or a part of one. */
export const line = (name: keyof Lines, facts: Readonly<Record<string, unknown>> = {}): string =>
  fill(words[name], facts);

/** A piece of work that is no tracing step, as the story tells it. */
export const workLine = (kind: keyof typeof words.work, facts: Readonly<Record<string, unknown>>): string =>
  fill(words.work[kind], facts);

export const momentName = (moment: keyof typeof words.moments): string => words.moments[moment];

const CURRENCY = oneOf(CURRENCIES, STORY.shop.settings.currency);

/** An amount in minor units, as it is written where the story plays. */
export const storyAmount = (minor: number): string => {
  const { locale } = STORY.shop.settings;
  return formatMoney({ minor, currency: CURRENCY }, locale);
};

type Named = { readonly name: string };
const STEPS: Readonly<Record<string, Named>> = tracing.steps;
const FAULTS: Readonly<Record<string, Named>> = tracing.faults;
const SYMPTOMS: Readonly<Record<string, { readonly bench: string }>> = symptoms;
const OUTCOMES: Readonly<Record<string, string>> = tracing.outcomes;

/** The trade's words for what the story names by its id. */
export const named = {
  step: (id: string): string => STEPS[id]?.name ?? id,
  fault: (id: string): string => FAULTS[id]?.name ?? id,
  symptom: (id: string): string => SYMPTOMS[id]?.bench ?? id,
  outcome: (step: string, id: string): string => outcomeName(`${step}.${id}`) ?? outcomeName(id) ?? id,
  way: nameIn(tracing.ways),
  stage: nameIn(stages),
  work: nameIn({ ...tracing.tasks, ...tracing.proofs }),
};

const outcomeName = (id: string): string | undefined => OUTCOMES[id];

function nameIn(names: Readonly<Record<string, string>>): (id: string) => string {
  return (id) => names[id] ?? id;
}

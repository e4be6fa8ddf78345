import words from '../../../assets/words/en/cli.json' with { type: 'json' };
import tracing from '../../../assets/words/en/tracing.json' with { type: 'json' };
import { fill } from '../../../core/text/wordsFor.ts';
import type { Answer, Said } from '../../../core/tracing/cases/answer/answer.ts';
import type { PlanInShort } from '../../../core/tracing/cases/answer/planInShort.ts';
import type { CaseRefusal } from '../../../core/tracing/cases/form/readCase.ts';
import { currentId } from '../../../core/tracing/live/renamed/aliases.ts';

type Texts = Readonly<Record<string, string>>;
const said = words.cases;
const STEPS: Readonly<Record<string, { readonly name: string; readonly does: string }>> = tracing.steps;
const FAULTS: Readonly<Record<string, { readonly name: string }>> = tracing.faults;
const textOf = (texts: Texts, id: string): string => texts[id] ?? id;

/** Less likely than this, nothing stands out. */
const STANDS_OUT = 0.35;
/** The suspects named beside a step. */
const MOST_SUSPECTS = 3;

const percent = (p: number): number => Math.round(100 * p);

/** What is wrong with a case file, on one line. */
export function refusalLine(file: string, refusal: CaseRefusal): string {
  const near = 'near' in refusal && refusal.near.length > 0 ? fill(said.near, { near: refusal.near }) : '';
  return fill(said.wrong[refusal.wrong], { ...refusal, file, near });
}

/** The whole of it in a sentence, what each remedy would cost, and the plan behind it. */
function shortLines({ likeliest, proof, remedies, plan, expected, perMinute }: PlanInShort): readonly string[] {
  if (!likeliest) return [];
  const money = (minutes: number) => Math.round(minutes * perMinute);
  const named = (step: string) => STEPS[step]?.name ?? step;
  const part = (id: string) => textOf(tracing.kinds, id);
  return [
    [
      fill(likeliest.p < STANDS_OUT ? said.unsure : said.likeliest, {
        part: part(likeliest.part),
        tenths: Math.round(10 * likeliest.p),
      }),
      ...(proof ? [fill(said.proof, { step: named(proof.step), minutes: Math.round(proof.minutes) })] : []),
    ].join(' '),
    fill(said.plan, {
      steps: plan.map(({ step, minutes }) => fill(said.planned, { step: named(step), minutes: Math.round(minutes) })),
      minutes: Math.round(expected),
      money: money(expected),
    }),
    fill(said.remedies, {
      remedies: remedies.map(({ part: id, p, minutes }) =>
        fill(said.remedy, { part: part(id), percent: percent(p), money: money(minutes) }),
      ),
    }),
  ];
}

/** One answer as a person reads it: the sentence first, the step, and what it rests on. */
export function answerLines(answer: Answer, short: PlanInShort | null): readonly string[] {
  const { step, verdict } = answer;
  const suspects = answer.suspects
    .flatMap(({ faults }) => faults)
    .toSorted((a, b) => b.p - a.p)
    .slice(0, MOST_SUSPECTS)
    .map(({ id, p }) => fill(said.suspect, { fault: FAULTS[id]?.name ?? id, percent: percent(p) }));
  return [
    answer.case,
    ...(short ? shortLines(short) : []),
    ...(step === null ? [endLine(verdict)] : stepLines(answer, step)),
    ...(suspects.length > 0 ? [fill(said.suspects, { suspects })] : []),
    ...answer.asks.map(({ id }) => fill(said.ask, { what: textOf(tracing.needs, id) })),
  ];
}

function stepLines(answer: Answer, step: string): readonly string[] {
  const outcomes = answer.outcomes.map(({ id, p }) =>
    fill(said.outcome, { outcome: textOf(tracing.outcomes, id), percent: percent(p) }),
  );
  return [
    fill(said.step, {
      name: STEPS[step]?.name ?? step,
      does: STEPS[step]?.does ?? '',
      minutes: Math.round(answer.minutes),
      waiting: Math.round(answer.waiting),
    }),
    ...answer.cautions.map((id) =>
      fill(said.caution, { caution: textOf(tracing.cautions, currentId('cautions', id)) }),
    ),
    fill(said.outcomes, { outcomes }),
  ];
}

/** How it ended, in one line. */
export function endLine(verdict: Said | null): string {
  if (!verdict) return said.verdict.none;
  const { kind, part, fault, p, mend, because } = verdict;
  return fill(said.verdict[kind], {
    part: part === null ? '' : textOf(tracing.kinds, part),
    fault: fault === null ? '' : fill(said['by-fault'], { fault: FAULTS[fault]?.name ?? fault }),
    percent: percent(p),
    mend: mend === null ? '' : said.mend[mend],
    because: because === null ? '' : said.because[because],
  });
}

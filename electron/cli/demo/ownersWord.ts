import type { Question } from '../../../core/approval/question.ts';
import { line } from './lines.ts';
import { STORY } from './story.ts';
import type { Teller } from './teller.ts';

type Option = {
  readonly id: string;
  readonly says: string;
  readonly limitMinor?: number | null;
  readonly goesTo?: string;
  readonly data?: string;
  readonly accepts?: boolean;
  readonly dead?: string | null;
};

const DAY = '2026-10-13';

async function lastQuestion(teller: Teller): Promise<Question> {
  const { job } = await teller.sheet();
  const question = job.questions.at(-1);
  if (!question) throw new Error('nothing was asked');
  return question;
}

const agrees = (option: Option, more: Readonly<Record<string, unknown>> = {}) => ({
  id: option.id,
  says: option.says,
  agrees: {
    limitMinor: option.limitMinor ?? null,
    items: [],
    accepts: false,
    data: option.data ?? null,
    dead: null,
    goesTo: option.goesTo ?? 'back',
    ...more,
  },
});

async function answerByPhone(teller: Teller, by: string, at: string, option: string, readBack: string): Promise<void> {
  const { owner } = STORY.story;
  teller.clock.set(`${DAY}T${at}`);
  const question = await lastQuestion(teller);
  await teller.forJob(by, 'answer', {
    question: question.id,
    options: [option],
    name: owner.name,
    how: { by: 'phone', at: teller.clock.now(), number: owner.phone, readBack },
  });
  const says = question.options.find(({ id }) => id === option)?.says;
  teller.say(line('answers', { owner: owner.name, option: says, readBack }));
}

/** What was seen is not what was told and no longer fits the limit: the question, the tries, the answer. */
export async function askChangedFinding(teller: Teller): Promise<void> {
  const { finding, dataFirst, owner } = STORY.story;
  teller.clock.set(`${DAY}T${finding.at}`);
  await teller.forJob('bram', 'ask', {
    kind: 'changed-finding',
    says: finding.says,
    options: finding.options.map((option) => agrees(option)),
    validUntil: null,
    offer: null,
    stops: true,
  });
  teller.say(line('notice'));
  for (const attempt of finding.tries) {
    teller.clock.set(`${DAY}T${attempt.at}`);
    await teller.forJob('mina', 'logTry', {
      question: (await lastQuestion(teller)).id,
      at: teller.clock.now(),
      how: attempt.how,
      result: attempt.result,
      number: attempt.how === 'phone' ? owner.phone : null,
    });
  }
  await answerByPhone(teller, 'bram', finding.answered.at, finding.answered.option, finding.answered.readBack);
  teller.clock.set(`${DAY}T${dataFirst.at}`);
  await teller.forJob('bram', 'ask', {
    kind: 'data-first',
    says: dataFirst.says,
    options: dataFirst.options.map((option) => agrees(option)),
    validUntil: null,
    offer: null,
    stops: false,
  });
  await answerByPhone(teller, 'bram', dataFirst.answered.at, dataFirst.answered.option, dataFirst.answered.readBack);
  await teller.forJob('bram', 'addBeforeFirstScrew', { ...STORY.story.before, ...dataFirst.key });
}

/** The board on offer: disclosed attribute by attribute, answered by phone. */
export async function offerSubstitute(teller: Teller, uses: Readonly<Record<string, number>>): Promise<void> {
  const { offer } = STORY.story;
  teller.clock.set(`${DAY}T${offer.at}`);
  const forPart = await teller.own('board');
  const { options, answered, at: _, part, ...disclosed } = offer;
  await teller.forJob('bram', 'ask', {
    kind: 'offer',
    says: offer.says,
    options: options.map((option) =>
      agrees(option, {
        accepts: option.accepts,
        items: option.accepts ? offer.extras : [],
        dead: option.dead === null ? null : { part: forPart, answer: option.dead },
      }),
    ),
    validUntil: null,
    stops: true,
    offer: {
      forPart,
      part: teller.part(part),
      afterwards: disclosed.afterwards,
      extras: disclosed.extras,
      priceMinor: disclosed.priceMinor,
      condition: disclosed.condition,
      warrantyMonths: disclosed.warrantyMonths,
      whyNotSame: disclosed.whyNotSame,
      uses,
    },
  });
  const { job } = await teller.sheet();
  const rows = job.questions.at(-1)?.offer?.rows ?? [];
  const count = (verdict: string) => rows.filter((row) => row.verdict === verdict).length;
  const [worse, equal, better] = [count('worse'), count('equal'), count('better')];
  const notCompared = count('cannot-be-compared');
  teller.say(line('disclosure', { rows: rows.length, worse, equal, better, notCompared }));
  await answerByPhone(teller, 'bram', answered.at, answered.option, answered.readBack);
}

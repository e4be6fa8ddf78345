import { type BenchCase, MENDS, REASONS, VERDICTS } from './caseShape.ts';
import {
  isCaution,
  isConsent,
  isFault,
  isHistory,
  isKind,
  isLoaner,
  isOutcome,
  isPart,
  isStep,
  isStepKind,
  isTerm,
} from './modelIds.ts';

/** What else may stand where a case asks for a next step. */
const ENDS = new Set<string>(['settled', 'hand-over']);

/** Every id of a case that neither the fault model nor the steps to come know, each with the field it stands in. */
export function strayIds(one: BenchCase): readonly string[] {
  return [
    ...strays('told.symptoms', one.told.symptoms, isTerm),
    ...(['changed', 'often', 'onlyWhen'] as const).flatMap((of) =>
      strays(`told.${of}`, one.told[of] ?? [], (id) => isHistory(of, id)),
    ),
    ...strays('seen', one.seen, isTerm),
    ...strays('firstStart', [`watch-start:${one.firstStart}`], isLogged),
    ...strays('machine.newPart', one.machine?.newPart ? [one.machine.newPart] : [], isKind),
    ...strays('agreed', one.agreed ?? [], isConsent),
    ...strays('before', one.before ?? [], isLogged),
    ...wall(one),
    ...truthAndAnswers(one),
    ...rules(one),
    ...end(one),
  ];
}

const strays = (at: string, ids: readonly string[], known: (id: string) => boolean) =>
  ids.filter((id) => !known(id)).map((id) => `${at}: ${id}`);

const inOne = <T>(value: T | readonly T[]): readonly T[] => (Array.isArray(value) ? value : [value as T]);

function isLogged(entry: string): boolean {
  const [step, outcome, ...more] = entry.split(':');
  return step !== undefined && outcome !== undefined && more.length === 0 && isOutcome(step, outcome);
}

/** A step, with or without one of its outcomes. */
const isPoint = (point: string) => (point.includes(':') ? isLogged(point) : isStep(point));

function wall({ wall: hung }: BenchCase): readonly string[] {
  if (hung === undefined || hung === 'full') return [];
  return [
    ...strays('wall.lacks', hung.lacks ?? [], (id) => isKind(id) || isLoaner(id)),
    ...strays('wall.dead', hung.dead ?? [], isLoaner),
  ];
}

function truthAndAnswers({ truth, answers }: BenchCase): readonly string[] {
  const { mended, afterwards, steps } = answers;
  const faults = truth.faults.flatMap((fault) => (typeof fault === 'string' ? [fault] : inOne(fault.like ?? [])));
  const mends = (entry: string) => (entry.startsWith('part:') ? isKind(entry.slice(5)) : isPoint(entry));
  return [
    ...strays('truth', faults, isFault),
    ...strays('answers.mended', (mended ?? []).flatMap(inOne), mends),
    ...strays('answers.afterwards', Object.entries(afterwards ?? {}).map(paired), isLogged),
    ...strays(
      'answers',
      Object.entries(steps).flatMap(([step, outcomes]) => inOne(outcomes).map((outcome) => `${step}:${outcome}`)),
      isLogged,
    ),
  ];
}

const paired = ([step, outcome]: readonly [string, string]) => `${step}:${outcome}`;

function rules(one: BenchCase): readonly string[] {
  const isStepOrKind = (what: string) => isStep(what) || isStepKind(what);
  const isUntil = (point: string) => point === 'mended' || isPoint(point);
  return [
    ...(one.never ?? []).flatMap(({ what, from, until }) => [
      ...strays('never.what', inOne(what), isStepOrKind),
      ...strays('never.from', from ?? [], isLogged),
      ...(until === 'ever' ? [] : strays('never.until', until.flatMap(inOne), isUntil)),
    ]),
    ...(one.askedFirst ?? []).flatMap(({ after, oneOf }) => [
      ...strays('askedFirst.after', after, isLogged),
      ...strays('askedFirst.oneOf', oneOf, (id) => ENDS.has(id) || isStep(id)),
    ]),
    ...(one.firstThought ?? []).flatMap(({ after, oneOf, notAbove }) => [
      ...strays('firstThought.after', after, isLogged),
      ...strays('firstThought', [...(oneOf ?? []), ...Object.keys(notAbove ?? {})], isFault),
    ]),
    ...(one.words ?? []).flatMap((word) => {
      if (typeof word === 'string') return [];
      if ('caution' in word) {
        return [...strays('words.caution', [word.caution], isCaution), ...strays('words.at', [word.at], isStepOrKind)];
      }
      return 'not' in word ? strays('words.at', inOne(word.at ?? []), isStepOrKind) : [];
    }),
  ];
}

function end({ end: ends }: BenchCase): readonly string[] {
  return [
    ...strays('end.part', inOne(ends.part ?? []), isPart),
    ...strays('end.also', inOne(ends.also ?? []), isPart),
    ...strays('end.fault', inOne(ends.fault ?? []), isFault),
    ...strays('end.after', (ends.after ?? []).flatMap(inOne), isPoint),
    ...strays('end.notSaid', ends.notSaid ?? [], isSaying),
  ];
}

const SAYINGS = new Set<string>([...VERDICTS, ...REASONS]);
const WAYS = new Set<string>(MENDS);

/** What an end may be forbidden to say: a verdict, with its part or way, a part, a fault, a reason; else a sentence. */
function isSaying(saying: string): boolean {
  if (SAYINGS.has(saying) || saying.includes(' ')) return true;
  const [head, tail, ...more] = saying.split(':');
  if (tail === undefined || more.length > 0) return false;
  if (head === 'fault') return isFault(tail);
  if (head === 'cured') return WAYS.has(tail);
  return (head === 'part' || head === 'confirmed' || head === 'named') && isPart(tail);
}

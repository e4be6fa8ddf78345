import { knownFault } from '../../live/model/special.ts';
import type { FaultModel } from '../../live/types.ts';
import type { Said } from '../answer/answer.ts';
import { USUAL } from '../bench/usual.ts';
import type { BenchCase } from '../form/benchCase.ts';

import type { Played } from '../play/play.ts';
import { oneHolds } from './logHas.ts';

export const ENDS = ['right', 'named', 'half', 'wrong', 'none'] as const;
export type End = (typeof ENDS)[number];
export type EndJudged = {
  readonly end: End;
  /** Rightly blamed, and said to have failed in a way in which it did not: counts among the words. */
  readonly otherWay: boolean;
};

const SETTLED: readonly string[] = ['confirmed', 'named', 'cured', 'not-reproduced'];
const NOTHING_TO_MEND: readonly string[] = ['outside', 'advice'];

/** How a played case ended, by the judging of the bench cases. */
export function judgeEnd(model: FaultModel, played: Played): EndJudged {
  const last = played.positions.at(-1);
  const verdict = last?.answer.verdict ?? null;
  if (played.cut || !last || !verdict || last.answer.step !== null) return { end: 'none', otherWay: false };
  const { end: wanted } = played.case;
  const isWanted = wanted.verdict.includes(verdict.kind);
  if (!SETTLED.includes(verdict.kind)) {
    const asked = verdict.kind !== 'ask-owner' || last.answer.asks.some(({ id }) => lacked(played.case).has(id));
    const right = isWanted && asked && !wrongToSay(verdict, wanted.notSaid);
    return { end: right ? done(model, played, 'right') : 'none', otherWay: false };
  }
  if (played.log.length === 0) return { end: 'wrong', otherWay: false };
  return { end: settledAs(model, played, verdict), otherWay: saysOtherWay(model, played, verdict) };
}

function settledAs(model: FaultModel, played: Played, verdict: Said): End {
  const { end: wanted } = played.case;
  const isWanted = wanted.verdict.includes(verdict.kind);
  const forbidden = wrongToSay(verdict, wanted.notSaid);
  if (verdict.kind === 'not-reproduced') return isWanted && !forbidden ? done(model, played, 'right') : 'wrong';
  if (verdict.kind === 'cured') {
    if (forbidden || !isMended(played, verdict)) return 'wrong';
    const byRightWay = isWanted && (!wanted.mend || (verdict.mend !== null && wanted.mend.includes(verdict.mend)));
    if (!byRightWay) return blames(model, played.case, verdict) ? 'half' : 'wrong';
    return namesOtherFault(model, played.case, verdict) ? 'half' : done(model, played, 'right');
  }
  const blamed = blames(model, played.case, verdict);
  if (forbidden) return verdict.kind === 'named' && blamed ? 'half' : 'wrong';
  if (!blamed) return 'wrong';
  if (!blamesBoth(played.case, verdict)) return 'half';
  if (isWanted) return done(model, played, 'right');
  return verdict.kind === 'named' ? 'named' : 'half';
}

/** The right end without what had to be done first is half of it. */
const done = (model: FaultModel, played: Played, end: End): End => {
  const { after } = played.case.end;
  const moment = { log: played.log, mended: played.positions.at(-1)?.mended ?? false };
  return after.every((one) => oneHolds(model, moment, typeof one === 'string' ? [one] : one)) ? end : 'half';
};

/** By then mended; where nothing of the machine was to be mended, looked at. A sweep is said only where one was done. */
function isMended(played: Played, { mend, apart }: Said): boolean {
  if (!apart && !played.log.some((entry) => entry.startsWith('sweep:'))) return false;
  if (mend !== null && NOTHING_TO_MEND.includes(mend)) return played.log.length > 0;
  return played.positions.at(-1)?.mended ?? false;
}

/** The parts that the true faults sit in, where a case does not say which part is to blame. */
function partsOf(model: FaultModel, { truth, end }: BenchCase): readonly string[] {
  if (end.part) return end.part;
  const ids = truth.faults.flatMap((one) => (typeof one === 'string' ? one : (one.like ?? [])));
  return ids.flatMap((id) => knownFault(model, id)?.part ?? []);
}

function blames(model: FaultModel, bench: BenchCase, { part, also }: Said): boolean {
  const right = [...partsOf(model, bench), ...(bench.end.also ? [bench.end.also] : [])];
  return [part, ...also.map((one) => one.part)].some((one) => one !== null && right.includes(one));
}

function blamesBoth({ end }: BenchCase, { part, also }: Said): boolean {
  if (end.also === undefined) return true;
  const blamed = [part, ...also.map((one) => one.part)];
  return blamed.includes(end.also) && (end.part ?? []).some((one) => blamed.includes(one));
}

/** Of a fault that the model has another name for, or none, any name is as good. */
function namesOtherFault(model: FaultModel, bench: BenchCase, { fault }: Said): boolean {
  if (fault === null || bench.truth.faults.some((one) => typeof one !== 'string')) return false;
  const right = [...bench.truth.faults.filter((one) => typeof one === 'string'), ...bench.end.fault];
  return !right.includes(fault) && model.faultIndex.has(fault);
}

const saysOtherWay = (model: FaultModel, played: Played, verdict: Said): boolean =>
  (verdict.kind === 'confirmed' || verdict.kind === 'named') &&
  blames(model, played.case, verdict) &&
  namesOtherFault(model, played.case, verdict);

/** What a verdict says, in the words of `notSaid`. */
export function wrongToSay(verdict: Said, notSaid: readonly string[]): boolean {
  const { kind, part, also, fault, mend, because } = verdict;
  const parts = [part, ...also.map((one) => one.part)].filter((one) => one !== null);
  const faults = [fault, ...also.map((one) => one.fault)].filter((one) => one !== null);
  const says = [
    kind,
    ...(kind === 'cured' ? [`cured:${mend}`] : parts.map((one) => `${kind}:${one}`)),
    ...parts.map((one) => `part:${one}`),
    ...faults.map((one) => `fault:${one}`),
    ...(because === null ? [] : [because]),
  ];
  return notSaid.some((one) => says.includes(one.startsWith('fault:') ? `fault:${one.slice(6)}` : one));
}

/**
 * What the owner of this machine has not said or given: asking for anything else ends nothing. To send a part away, or to
 * order one, can always be asked for, so that it ends no case by itself.
 */
function lacked({ agreed, machine, money }: BenchCase): ReadonlySet<string> {
  const given = new Set(agreed ?? USUAL.agreed);
  const consents = USUAL.agreed.filter((one) => !given.has(one));
  const key = (machine.encrypted ?? 'no') !== 'no' && machine.keyInHand !== true;
  return new Set([...consents, ...(key ? ['key', 'key-or-risk'] : []), ...(money.worth == null ? ['value'] : [])]);
}

import type { Harm } from '../../live/gate.ts';
import type { FaultModel } from '../../live/types.ts';
import type { Never } from '../form/benchCase.ts';
import { ANY_PART, KINDS } from '../kinds/kindNames.ts';
import type { Played, Position } from '../play/play.ts';
import { holds, isStep, oneHolds } from './logHas.ts';

/** What was proposed, or could be taken, although it must not be done then. */
export type Breach = {
  readonly step: string;
  readonly what: string;
  readonly harm: Harm | null;
  readonly why: string;
  /** The length of the log at that moment. */
  readonly at: number;
};

export type NeverJudged = { readonly breached: readonly Breach[]; readonly leftOpen: readonly Breach[] };

const isKind = (what: string): boolean =>
  KINDS.some((one) => one === what) || ANY_PART.some((one) => what.startsWith(`${one}:`));

const ENDED: readonly string[] = ['confirmed', 'named', 'cured', 'not-reproduced'];

/** Every proposal and every end against what must never be done to this machine, and what was left open beside them. */
export function judgeNevers(model: FaultModel, played: Played): NeverJudged {
  const breached: Breach[] = [];
  const leftOpen = new Map<string, Breach>();
  for (const position of played.positions) {
    for (const never of played.case.never) {
      if (!never.from.every((what) => holds(model, position, what))) continue;
      if (oneHolds(model, position, never.until)) continue;
      const opening = stepsThatOpen(model, never);
      const breachBy = (step: string, what: string): Breach => ({
        step,
        what,
        harm: never.harm ?? null,
        why: never.why,
        at: position.log.length,
      });
      const doing = proposed(position).flatMap(({ step, does }) => {
        const what = opening.has(step) ? undefined : never.what.find((one) => does(model, one));
        return what === undefined ? [] : [breachBy(step, what)];
      });
      breached.push(...doing);
      if (!never.held) continue;
      for (const { id, state } of position.answer.steps) {
        if (state !== 'offered' || opening.has(id) || id === position.answer.step) continue;
        const what = never.what.find((one) => stepDoes(position, id)(model, one));
        if (what !== undefined) leftOpen.set(`${id} ${what}`, breachBy(id, what));
      }
    }
  }
  return { breached, leftOpen: [...leftOpen.values()] };
}

type Does = (model: FaultModel, what: string) => boolean;

function proposed(position: Position): readonly { readonly step: string; readonly does: Does }[] {
  const { step, verdict } = position.answer;
  if (step !== null) return [{ step, does: stepDoes(position, step) }];
  if (!verdict || !ENDED.includes(verdict.kind)) return [];
  return [{ step: 'settled', does: (_, what) => what === 'settled' || what === `settled:${verdict.kind}` }];
}

const stepDoes =
  ({ kindsOf }: Position, step: string): Does =>
  (model, what) =>
    isKind(what) ? kindsOf(step).has(what) : isStep(model, what, step);

/** What `until` itself names opens the way and breaches nothing. */
function stepsThatOpen(model: FaultModel, { until }: Never): { readonly has: (step: string) => boolean } {
  const named = until.flat().map((what) => what.split(':')[0] ?? '');
  return { has: (step) => named.some((what) => isStep(model, what, step)) };
}

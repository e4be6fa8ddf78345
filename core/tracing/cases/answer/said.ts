import type { EngineVerdict, FaultModel, StopAnswer, Suspect } from '../../live/types.ts';
import { faultOf } from '../../live/verdict/blame.ts';
import { mendedByKind } from '../../live/verdict/sweep.ts';
import { wayBelieved } from '../../live/wayBelieved.ts';
import type { Because, Mend, Said } from './answer.ts';

const NOTHING: Omit<Said, 'kind'> = {
  part: null,
  also: [],
  fault: null,
  p: 0,
  pFault: null,
  mend: null,
  apart: true,
  because: null,
};

/** A verdict as the protocol says it; null while it is traced on. */
export function said(model: FaultModel, verdict: EngineVerdict, suspects: readonly Suspect[]): Said | null {
  const chanceOf = (id: string) => suspects.reduce((sum, one) => sum + (one.fault === id ? one.p + one.mended : 0), 0);
  switch (verdict.verdict) {
    case 'tracing':
      return null;
    case 'named':
    case 'confirmed': {
      const { part, p, fault, pFault } = verdict;
      const also = verdict.also.map((one) => ({
        part: one.part,
        fault: wayBelieved({ p: one.p, pFault: chanceOf(one.fault) }) ? one.fault : null,
      }));
      return { ...NOTHING, kind: verdict.verdict, part, p, also, ...faultSaid(fault, pFault, p) };
    }
    case 'cured': {
      const { by, fault, p } = verdict;
      return {
        ...NOTHING,
        kind: 'cured',
        part: fault === null ? null : faultOf(model, fault).part,
        p,
        ...(fault === null ? {} : faultSaid(fault, chanceOf(fault), p)),
        mend: by === 'sweep' ? mendOfSweep(model, suspects) : by,
        apart: by !== 'sweep',
      };
    }
    case 'not-reproduced':
      return { ...NOTHING, kind: 'not-reproduced', p: verdict.hiddenChance };
  }
}

const faultSaid = (fault: string, pFault: number, p: number): Pick<Said, 'fault' | 'pFault'> =>
  wayBelieved({ p, pFault }) ? { fault, pFault } : { fault: null, pFault: null };

function mendOfSweep(model: FaultModel, suspects: readonly Suspect[]): Mend {
  const { setting, reseating } = mendedByKind(model, suspects);
  return setting > reseating ? 'setting' : 'reseating';
}

/** The end where nothing was settled. */
const handedOver = (because: Because): Said => ({ ...NOTHING, kind: 'hand-over', because });

/**
 * The end as the screen says it; `asks`: there is something left to ask the owner for. What safety still asks for keeps a
 * verdict back.
 */
export function endOf(model: FaultModel, stop: StopAnswer, suspects: readonly Suspect[], asks: boolean): Said {
  if (stop.stop === 'settled') return said(model, stop.verdict, suspects) ?? handedOver('no-step-left');
  if (stop.stop === 'owed' && stop.owed.some(({ steps }) => steps.length === 0)) return handedOver('declined');
  if (asks) return { ...NOTHING, kind: 'ask-owner' };
  return handedOver(stop.stop === 'owed' ? 'declined' : stop.because);
}

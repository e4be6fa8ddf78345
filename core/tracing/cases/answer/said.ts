import { faultOf } from '../../live/offer/blame.ts';
import { mendedByKind } from '../../live/offer/sweep.ts';
import type { FaultModel, StopAnswer, Suspect, Verdict } from '../../live/types.ts';
import type { Because, Mend, Said } from './answer.ts';

/** The way in which a part failed is said only where it is believed: this likely, given the part. Common practice, no source. */
const SAID_FROM = 0.8;

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
export function said(model: FaultModel, verdict: Verdict, suspects: readonly Suspect[]): Said | null {
  const chanceOf = (id: string) => suspects.reduce((sum, one) => sum + (one.fault === id ? one.p + one.mended : 0), 0);
  switch (verdict.verdict) {
    case 'tracing':
      return null;
    case 'named':
    case 'confirmed': {
      const { part, p } = verdict;
      return { ...NOTHING, kind: verdict.verdict, part, p, ...faultSaid(verdict.fault, chanceOf(verdict.fault), p) };
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
  pFault >= SAID_FROM * p ? { fault, pFault } : { fault: null, pFault: null };

function mendOfSweep(model: FaultModel, suspects: readonly Suspect[]): Mend {
  const { setting, reseating } = mendedByKind(model, suspects);
  return setting > reseating ? 'setting' : 'reseating';
}

/** The end where nothing was settled. */
const handedOver = (because: Because): Said => ({ ...NOTHING, kind: 'hand-over', because });

/** The end as the screen says it; `asks`: there is something left to ask the owner for. */
export const endOf = (model: FaultModel, stop: StopAnswer, suspects: readonly Suspect[], asks: boolean): Said =>
  stop.stop === 'settled'
    ? (said(model, stop.verdict, suspects) ?? handedOver('no-step-left'))
    : asks
      ? { ...NOTHING, kind: 'ask-owner' }
      : handedOver(stop.because);

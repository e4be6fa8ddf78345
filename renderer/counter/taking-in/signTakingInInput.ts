import type { Figures } from '../../../core/contract/contract.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import type { InputOf } from '../../link/useExecute.ts';
import { reportSaid } from '../fields/reportInput.ts';
import { toSign } from '../fields/signedInput.ts';
import { beforeAnswered, signerOf, type TakingInSheet } from './sheet.ts';
import { signedAlone } from './signedAlone.ts';
import { beforeInput, momentOf, takeInInput } from './takeInInput.ts';

export type SignTakingInInput = InputOf<'signTakingIn'>;

/** The sheet as the command takes it, before anything is signed; photographs are named as the draft has them. */
export function signTakingInInput(
  sheet: TakingInSheet,
  settings: ShopSettings,
  estimate: Figures | null,
): SignTakingInInput {
  const alone = signedAlone(sheet);
  const signed = toSign(signerOf(sheet.owner));
  return {
    ...takeInInput(sheet, settings.language, settings.zone),
    promised: momentOf(sheet.promise, settings.zone),
    before: beforeAnswered(sheet.before) ? beforeInput(sheet.before) : null,
    report: sheet.report && reportSaid(sheet.report),
    estimate,
    answers: Object.fromEntries(Object.entries(sheet.answers).filter(([id]) => !alone.some((one) => one === id))),
    photographs: sheet.photographs.map((one) => ({ ...one })),
    alone: alone.map((id) => ({
      id,
      answer: id === 'data-parts' ? 'send' : 'yes',
      about: id === 'risk' ? sheet.riskAbout.trim() || null : null,
      signed,
    })),
    signed,
  };
}

const OPEN = '…';

/** The same with what is still to be written left open, so that the papers can be shown from the first word on. */
export function shownWhileWritten(input: SignTakingInInput): SignTakingInInput {
  const { owner, machine, told } = input;
  const signed = { ...input.signed, name: input.signed.name || OPEN };
  return {
    ...input,
    owner: 'fresh' in owner ? { ...owner, fresh: openOwner(owner.fresh) } : owner,
    machine: 'fresh' in machine ? { fresh: { ...machine.fresh, called: machine.fresh.called || OPEN } } : machine,
    told: { ...told, ownWords: told.ownWords || OPEN },
    alone: input.alone.map((line) => ({ ...line, signed })),
    signed,
  };
}

type FreshOwner = Extract<SignTakingInInput['owner'], { readonly fresh: unknown }>['fresh'];

function openOwner(fresh: FreshOwner): FreshOwner {
  const name = fresh.name || OPEN;
  switch (fresh.kind.is) {
    case 'minor':
      return { ...fresh, name, kind: { ...fresh.kind, guardian: fresh.kind.guardian || OPEN } };
    case 'for-someone-else':
      return { ...fresh, name, kind: { ...fresh.kind, machineOf: fresh.kind.machineOf || OPEN } };
    default:
      return { ...fresh, name };
  }
}

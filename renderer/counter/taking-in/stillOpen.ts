import type { IdOf } from '../../catalogue.ts';
import { signerOf, type TakingInSheet } from './sheet.ts';
import type { WrongOnSheet } from './wrongOnSheet.ts';

/** What must still be known or put right before the owner leaves; empty when the sheet can be signed. */
export function stillOpen(sheet: TakingInSheet, signed: boolean, wrong: WrongOnSheet): readonly IdOf<'counter.open'>[] {
  const { owner, machine } = sheet;
  const reached = owner.known !== null || owner.phone.trim() !== '' || owner.mail.trim() !== '';
  return [
    ...(signerOf(owner) === '' || owner.name.trim() === '' ? (['owner'] as const) : []),
    ...(reached ? [] : (['reach'] as const)),
    ...(machine.known === null && machine.called.trim() === '' ? (['machine'] as const) : []),
    ...(owner.known === null && owner.kind === 'for-someone-else' && owner.machineOf.trim() === ''
      ? (['machine-of'] as const)
      : []),
    ...(sheet.ownWords.trim() === '' ? (['told'] as const) : []),
    ...(sheet.symptoms.length === 0 && sheet.tasks === null ? (['terms'] as const) : []),
    ...(sheet.limitMinor === null ? (['limit'] as const) : []),
    ...(sheet.cameBack && sheet.cameBack.same === null ? (['came-back'] as const) : []),
    ...(sheet.photographs.length > 0 && sheet.answers.photos !== 'yes' ? (['photographs'] as const) : []),
    ...(wrong.phone ? (['wrong-phone'] as const) : []),
    ...(wrong.mail ? (['wrong-mail'] as const) : []),
    ...(wrong.promise || wrong.deadline ? (['wrong-day'] as const) : []),
    ...(wrong.text ? (['wrong-text'] as const) : []),
    ...(signed ? [] : (['signature'] as const)),
  ];
}

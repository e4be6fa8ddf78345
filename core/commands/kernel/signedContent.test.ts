import { expect, it } from 'vitest';
import { z } from 'zod';
import { aJobAt, askingOf, viewOf } from '../../../tests/builders/jobAt.ts';
import { jobCommand } from './command.ts';
import { signShown } from './contentHashes.ts';
import { zJobId, zSigned } from './fields.ts';
import { contentAt, contentOf } from './signedContent.ts';
import { openUnitOfWork } from './unitOfWork.ts';

/** A command that takes a signature and shows no paper to stand under. */
const confirmBySignature = jobCommand(
  'confirm-left',
  z.strictObject({ job: zJobId, signed: zSigned }),
  ['tracing'],
  (view, { job }, asking) => {
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${job}`, 'left-confirmed', {});
    return unit.accept();
  },
);

it('nothing is signed where no paper is shown, whatever the signature names', () => {
  const job = aJobAt('tracing');
  const asking = askingOf();
  const input = confirmBySignature.input.parse({
    job: job.id,
    signed: { name: 'Judith Amberley', drawn: null, contentHash: null },
  });
  const then = { ...asking, at: contentAt(asking.at) };
  const drafted = confirmBySignature.draft(viewOf(job), input, then);
  const { papers, contentHash } = contentOf(
    'confirm-left',
    input,
    drafted.ok ? drafted : expect.fail('refused before it was signed'),
    then,
  );
  expect(papers).toEqual([]);
  const signed = confirmBySignature.input.parse(signShown(input, contentHash));
  expect(confirmBySignature.decide(viewOf(job), signed, asking)).toMatchObject({
    ok: false,
    refusal: { refused: 'nothing-shown', command: 'confirm-left' },
  });
});

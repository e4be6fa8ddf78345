import { expect, it } from 'vitest';
import { aJobAt, judith } from '../../../tests/builders/jobAt.ts';
import { noConsents } from '../../approval/consent.ts';
import { personal } from '../../journal/personal.ts';
import { epochMs } from '../../time.ts';
import { mayNotOpen } from './mayNotOpen.ts';

const signature = {
  name: personal('signature', judith.id, 'Judith'),
  drawn: null,
  typed: true,
  contentHash: 'a'.repeat(64),
  at: epochMs(0),
};

it('no hands go in before the owner’s yes to its being opened, nor once it was taken back', () => {
  const consents = { ...noConsents, answers: { open: 'yes' }, signature } as const;
  expect(mayNotOpen(aJobAt('tracing'))).toEqual({ refused: 'consent-missing', needs: ['open'] });
  expect(mayNotOpen(aJobAt('tracing', { consents }))).toBeNull();
  expect(mayNotOpen(aJobAt('tracing', { consents: { ...consents, withdrawn: ['open'] } }))).toMatchObject({
    refused: 'consent-missing',
  });
});

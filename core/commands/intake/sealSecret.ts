import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId, zLine, zText } from '../kernel/fields.ts';
import { nextIdIn } from '../kernel/nextIdIn.ts';

/** A secret the owner left (better: a temporary account): sealed, wiped at hand-over. */
export const sealSecret = jobCommand(
  'seal-secret',
  z.strictObject({ job: zJobId, what: zLine, secret: zText }),
  OPEN_STAGES,
  (view, { job, what, secret }) =>
    accept({
      stream: `job:${job}`,
      kind: 'secret-sealed',
      body: { id: nextIdIn(view.job.secrets), what, secret: personal('secret', view.job.owner, secret) },
    }),
);

/** Wipes a secret before the hand-over would. */
export const wipeSecret = jobCommand(
  'wipe-secret',
  z.strictObject({ job: zJobId, what: zLine }),
  OPEN_STAGES,
  (view, { job, what }) => {
    const secret = view.job.secrets.find((one) => one.what === what);
    return secret
      ? accept({ stream: `job:${job}`, kind: 'secret-wiped', body: { id: secret.id } })
      : refuse('no-such-secret', { what });
  },
);

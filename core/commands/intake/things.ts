import { z } from 'zod';
import { agreed } from '../../approval/consent.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zCount, zId, zJobId, zLine, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';

/** Something that came along and was not on the receipt: a new receipt takes the old one's place. */
export const addThing = jobCommand(
  'add-thing',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount, where: zLine }),
  OPEN_STAGES,
  (view, { job, ...thing }, asking) => {
    const book = openUnitOfWork(view, asking);
    book.add(`job:${job}`, 'thing-found', thing);
    if (view.job.papers.some((paper) => paper.kind === 'intake-receipt')) issuePaper(book, 'intake-receipt', asking);
    return book.accept();
  },
  () => ({ papers: ['intake-receipt'] }),
);

/** Something of ours goes on or into the machine: it must come off before the machine goes home. */
export const putOursOn = jobCommand(
  'put-ours-on',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount }),
  OPEN_STAGES,
  (_view, { job, ...thing }) => accept({ stream: `job:${job}`, kind: 'ours-on', body: thing }),
);

/** Something of ours comes off. */
export const takeOursOff = jobCommand(
  'take-ours-off',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount }),
  OPEN_STAGES,
  (view, { job, ...thing }) => {
    const on = view.job.shopItemsOn.find((one) => one.thing === thing.thing)?.count ?? 0;
    if (on < thing.count) return refuse('not-on-the-machine', { thing: thing.thing, on, asked: thing.count });
    return accept({ stream: `job:${job}`, kind: 'ours-off', body: thing });
  },
);

/** Photographs for the record of this job, all of them or none; the blobs were stored before. */
export const addPhotographs = jobCommand(
  'add-photographs',
  z.strictObject({
    job: zJobId,
    photographs: z
      .array(z.strictObject({ of: zLine, blob: zId }))
      .min(1)
      .max(20),
  }),
  OPEN_STAGES,
  (view, { job, photographs }) => {
    if (!agreed(view.job.consents, 'photos')) return refuse('consent-missing', { needs: ['photos'] });
    return accept(
      ...photographs.map((body) => ({ stream: `job:${job}` as const, kind: 'photographed' as const, body })),
    );
  },
);

/** A secret the owner left (better: a temporary account): sealed, wiped at hand-over. */
export const sealSecret = jobCommand(
  'seal-secret',
  z.strictObject({ job: zJobId, what: zLine, secret: zText }),
  OPEN_STAGES,
  (view, { job, what, secret }) =>
    accept({
      stream: `job:${job}`,
      kind: 'secret-sealed',
      body: { what, secret: personal('secret', view.job.owner, secret) },
    }),
);

/** Wipes a secret before the hand-over would. */
export const wipeSecret = jobCommand(
  'wipe-secret',
  z.strictObject({ job: zJobId, what: zLine }),
  OPEN_STAGES,
  (view, { job, what }) =>
    view.job.secrets.includes(what)
      ? accept({ stream: `job:${job}`, kind: 'secret-wiped', body: { what } })
      : refuse('no-such-secret', { what }),
);

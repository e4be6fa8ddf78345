import { implement, ORPCError } from '@orpc/server';
import { contract } from '../../core/contract/contract.ts';
import { type RefusalKind, refusalKind } from '../../core/contract/refusalKind.ts';
import type { StandingSheet } from '../../core/contract/standing.ts';
import type { JobId } from '../../core/ids.ts';
import type { Refusal } from '../../core/refusal.ts';
import { epochMs } from '../../core/time.ts';
import { type OpenShop, type Reader, refusalFromError } from '../../db/index.ts';
import type { Backups } from './backups/openBackups.ts';
import { carryOut } from './desk/carryOut.ts';
import type { Drafts } from './desk/drafts.ts';
import type { Engine } from './desk/estimating/engine.ts';
import { firstEstimate } from './desk/estimating/firstEstimate.ts';
import type { Following } from './desk/estimating/following.ts';
import { letterName, storeLetter } from './desk/files/letters.ts';
import { holdPhotograph, keepHeldPhotograph, storePhotograph } from './desk/files/photographs.ts';
import { printTags } from './desk/files/printTags.ts';
import { takeBlob } from './desk/files/takeBlob.ts';
import { loadView } from './desk/loadView.ts';
import { preview } from './desk/preview.ts';
import { jobSetApart, shopSetApart } from './desk/setApart.ts';
import { bookkeeping } from './desk/sheets/bookkeeping.ts';
import { outOfOurs, partPath, thenAndNow } from './desk/sheets/custodyReads.ts';
import { dayLine } from './desk/sheets/dayLine.ts';
import { enquiries } from './desk/sheets/enquiries.ts';
import { byTag, find, recognised } from './desk/sheets/find.ts';
import { jobSheet } from './desk/sheets/jobSheet.ts';
import { keptSheet } from './desk/sheets/keptSheet.ts';
import { nightSheet } from './desk/sheets/nightSheet.ts';
import { ordersSheet } from './desk/sheets/ordersSheet.ts';
import { drawIssued, issuedPaper } from './desk/sheets/papers.ts';
import { reckoning } from './desk/sheets/reckoning.ts';
import { setApartJobs } from './desk/sheets/setApartJobs.ts';
import { stampsOn } from './desk/sheets/stamps.ts';
import { planSheet, tracingSheet } from './desk/sheets/tracingSheet.ts';
import { wallSheet } from './desk/sheets/wallSheet.ts';
import type { Tools } from './desk/tools.ts';
import { keepingModel } from './keepingModel.ts';
import type { Doorman } from './people/doorman.ts';
import { contentsOf, personExport } from './persons/personExport.ts';
import { personSheet, personsDue } from './persons/personSheet.ts';
import { LISTED_DAYS } from './persons/retention.ts';
import { changeStream } from './transport/changeStream.ts';
import type { Caller } from './transport/doors.ts';
import { tellDefect } from './transport/tellDefect.ts';

export type RouterNeeds = {
  readonly shop: OpenShop;
  readonly drafts: Pick<Drafts, 'save' | 'load'>;
  readonly tools: Tools;
  readonly engine: Engine;
  readonly following: Following;
  readonly doorman: Doorman;
  readonly standing: () => StandingSheet | Promise<StandingSheet>;
  readonly backups: Pick<Backups, 'sheet' | 'set' | 'run'>;
  /** What has to follow an erasure: the key parts of backups. */
  readonly afterErasure: () => Promise<unknown>;
  readonly clock: () => number;
};

/** The procedures behind both doors. Reads fold the journal; the one write of it is `execute`. Drafts, photographs and letters are kept beside it. */
export function createRouter({
  shop,
  drafts,
  tools,
  engine,
  following,
  doorman,
  standing,
  backups,
  afterErasure,
  clock,
}: RouterNeeds) {
  const os = implement(contract)
    .$context<Caller>()
    .use(async ({ context, next, path }) => {
      try {
        const barred = await doorman.whyNotRead(context.session, path.join('.'));
        if (barred) throw new ORPCError('FORBIDDEN', { data: barred });
        return await next();
      } catch (error) {
        // A disk that fails is told in words, as a refusal is: nothing was changed.
        const refusal = refusalFromError(error, shop.path);
        if (!refusal) throw error;
        tellDefect(path.join('.'), error);
        throw new ORPCError('CONFLICT', { data: refusal });
      }
    });
  const now = () => epochMs(clock());
  const modelAsStated = keepingModel();
  /** What is read of a job; where there is nothing, it says whether there is no such job or it cannot be read. */
  const ofJob = async <T>(
    job: JobId,
    ask: (read: Reader) => Promise<T | null>,
    notFound: (facts: { data: Refusal }) => Error,
  ): Promise<T> => {
    const read = await shop.read();
    const value = await ask(read);
    if (value === null) throw notFound({ data: jobSetApart(read, job) ?? { refused: 'no-such-job', job } });
    return value;
  };
  return os.router({
    execute: os.execute.handler(async ({ input, context, errors }) => {
      const done = await carryOut(shop, tools, context.session.station, input, doorman.mayAsk(context.session));
      if (!done.ok) throw errors[refusalKind(done.refusal.refused)]({ data: done.refusal });
      if (!done.replayed) following.follow(input, done);
      if (input.name === 'eraseOwner') await afterErasure();
      return { seq: done.seq, firstStream: done.firstStream, replayed: done.replayed };
    }),
    standing: os.standing.handler(() => standing()),
    preview: os.preview.handler(({ input, context }) =>
      preview(shop, tools, input, now(), doorman.mayAsk(context.session)),
    ),
    here: os.here.handler(({ context }) => doorman.here(context.session)),
    enter: os.enter.handler(async ({ input, context, errors }) =>
      notRefused(await doorman.enter(context.session, input), errors),
    ),
    lock: os.lock.handler(({ context }) => doorman.lock(context.session)),
    stir: os.stir.handler(({ context }) => doorman.stir(context.session)),
    setPin: os.setPin.handler(async ({ input, context, errors }) =>
      notRefused(await doorman.setPin(context.session, input), errors),
    ),
    makeRecoveryWords: os.makeRecoveryWords.handler(async ({ input, context, errors }) =>
      notRefused(await doorman.makeWords(context.session, input), errors),
    ),
    recover: os.recover.handler(async ({ input, context, errors }) =>
      notRefused(await doorman.recover(context.session, input), errors),
    ),
    backups: os.backups.handler(() => backups.sheet()),
    setBackups: os.setBackups.handler(({ input, errors }) => {
      notRefused(backups.set(input), errors);
      return backups.sheet();
    }),
    backUpNow: os.backUpNow.handler(async ({ errors }) => {
      notRefused((await backups.run('by-hand')).refusal, errors);
      return backups.sheet();
    }),
    personsDue: os.personsDue.handler(async () => ({
      days: LISTED_DAYS,
      due: await personsDue(await shop.read(), shop, now(), LISTED_DAYS),
    })),
    personOf: os.personOf.handler(async ({ input, errors }) =>
      ofJob(
        input.job,
        async (read) => {
          const job = await read.load('job', input.job);
          return job && personSheet(read, shop, job.owner, now());
        },
        errors.NOT_FOUND,
      ),
    ),
    personFile: os.personFile.handler(async ({ input, errors }) => {
      const made = await personExport(shop, await shop.read(), input.owner, now());
      if (!made) throw errors.NOT_FOUND({ data: { refused: 'no-such-owner', owner: input.owner } });
      const text = JSON.stringify({ ...made.all, contents: contentsOf(made.files) }, null, 2);
      return new File([text], 'person.json', { type: 'application/json' });
    }),
    shop: os.shop.handler(async () => {
      const read = await shop.read();
      return { ...(await read.load('shop')), setApart: shopSetApart(read) };
    }),
    dayLine: os.dayLine.handler(async () => {
      const [read, at] = [await shop.read(), now()];
      return { now: at, points: await dayLine(read, at), setApart: await setApartJobs(read, shop.setApart(), at) };
    }),
    job: os.job.handler(async ({ input, errors }) =>
      ofJob(input.job, (read) => jobSheet(read, input.job, now(), following.computing(input.job)), errors.NOT_FOUND),
    ),
    tracing: os.tracing.handler(async ({ input, errors, signal }) =>
      ofJob(
        input.job,
        (read) => tracingSheet(read, engine, input.job, { ...input, at: now(), signal }),
        errors.NOT_FOUND,
      ),
    ),
    planAhead: os.planAhead.handler(async ({ input, errors, signal }) =>
      ofJob(input.job, (read) => planSheet(read, engine, input.job, now(), signal), errors.NOT_FOUND),
    ),
    wall: os.wall.handler(async () => wallSheet(await shop.read(), now())),
    reckoning: os.reckoning.handler(async () =>
      reckoning(await shop.read(), (own) => modelAsStated({ ...own, learnt: null })),
    ),
    orders: os.orders.handler(async () => ordersSheet(await shop.read(), now())),
    kept: os.kept.handler(async () => keptSheet(await shop.read(), now())),
    path: os.path.handler(async ({ input }) => partPath(await shop.read(), input.part, now())),
    out: os.out.handler(async () => outOfOurs(await shop.read(), now())),
    thenAndNow: os.thenAndNow.handler(async ({ input, errors }) => {
      const found = await thenAndNow(await shop.read(), input.machine, now());
      if (!found) throw errors.NOT_FOUND({ data: { refused: 'no-such-machine', machine: input.machine } });
      return found;
    }),
    night: os.night.handler(async () => nightSheet(await shop.read(), engine, now())),
    enquiries: os.enquiries.handler(async () => enquiries(await shop.read())),
    find: os.find.handler(async ({ input }) => find(await shop.read(), input.text, now(), shop.setApart())),
    byTag: os.byTag.handler(async ({ input }) => byTag(await shop.read(), input.tag, now())),
    recognise: os.recognise.handler(async ({ input }) =>
      recognised(await shop.read(), await shop.recognise(input.kind, input.value), now()),
    ),
    paper: os.paper.handler(async ({ input, errors }) => {
      const paper = await issuedPaper(await shop.read(), input.number);
      if (!paper) throw errors.NOT_FOUND({ data: { refused: 'no-such-paper', number: input.number } });
      return { ...paper, stamps: stampsOn(paper, { copy: input.copy ?? false }) };
    }),
    paperFile: os.paperFile.handler(async ({ input, errors }) => {
      const paper = await issuedPaper(await shop.read(), input.number);
      if (!paper) throw errors.NOT_FOUND({ data: { refused: 'no-such-paper', number: input.number } });
      return new File(
        [await drawIssued(paper, { copy: input.copy ?? false })],
        `${input.number.replaceAll('/', '-')}.pdf`,
        {
          type: 'application/pdf',
        },
      );
    }),
    bookkeeping: os.bookkeeping.handler(
      async ({ input }) =>
        new File([await bookkeeping(await shop.read(), tools, input, now())], 'bills.csv', {
          type: 'text/csv;charset=utf-8;header=present',
        }),
    ),
    printTags: os.printTags.handler(async ({ input, errors }) => {
      const read = await shop.read();
      const { settings } = (await loadView(read, {}, now())).shop;
      if (!settings) throw errors.NOT_FOUND({ data: { refused: 'shop-not-set-up' } });
      const setting = tools.paperSetting(settings.language, settings);
      const bytes = await printTags(read, input, { settings, setting, randomInt: tools.randomInt, at: now() });
      return new File([bytes], 'tags.pdf', { type: 'application/pdf' });
    }),
    storePhotograph: os.storePhotograph.handler(async ({ input, errors }) =>
      notRefused(await storePhotograph(shop, input.job, await bytesOf(input.file), now()), errors),
    ),
    holdPhotograph: os.holdPhotograph.handler(async ({ input, errors }) =>
      notRefused(await holdPhotograph(shop, await bytesOf(input.file)), errors),
    ),
    keepHeldPhotograph: os.keepHeldPhotograph.handler(async ({ input, errors }) =>
      notRefused(await keepHeldPhotograph(shop, input.owner, input.held), errors),
    ),
    photograph: os.photograph.handler(async ({ input, errors }) => {
      const bytes = await takeBlob(shop, input.blob);
      if (!bytes) throw errors.NOT_FOUND({ data: { refused: 'photograph-missing', blob: input.blob } });
      return new File([bytes], 'photograph', { type: 'application/octet-stream' });
    }),
    storeLetter: os.storeLetter.handler(async ({ input, errors }) =>
      notRefused(await storeLetter(shop, input.job, await bytesOf(input.file), now()), errors),
    ),
    letter: os.letter.handler(async ({ input, errors }) => {
      const bytes = await takeBlob(shop, input.blob);
      if (!bytes) throw errors.NOT_FOUND({ data: { refused: 'letter-missing', blob: input.blob } });
      return new File([bytes], letterName(bytes), { type: 'application/octet-stream' });
    }),
    firstEstimate: os.firstEstimate.handler(async ({ input, signal }) =>
      firstEstimate(await shop.read(), engine, input, now(), signal),
    ),
    saveDraft: os.saveDraft.handler(async ({ input, errors }) => {
      const refusal = await drafts.save(input.key, input.text);
      if (refusal) throw errors[refusalKind(refusal.refused)]({ data: refusal });
      return null;
    }),
    loadDraft: os.loadDraft.handler(({ input }) => drafts.load(input.key)),
    changes: os.changes.handler(({ input, signal }) =>
      changeStream({ headSeq: async () => (await shop.read()).head, changes: shop.changes }, input.since, signal),
    ),
  });
}

const bytesOf = async (file: File): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer());

/** What came of it; a refusal is thrown as an error of its kind, as everywhere in the contract. */
function notRefused<Came extends object | null>(
  came: Came | Refusal,
  errors: { readonly [kind in RefusalKind]: (facts: { readonly data: Refusal }) => Error },
): Came {
  if (isRefusal(came)) throw errors[refusalKind(came.refused)]({ data: came });
  return came;
}

const isRefusal = (came: object | null): came is Refusal => came !== null && 'refused' in came;

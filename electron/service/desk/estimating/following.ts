import type { CommandRequest } from '../../../../core/commands/asked.ts';
import type { Computing } from '../../../../core/contract/screens.ts';
import { seedOf } from '../../../../core/figures/seedOf.ts';
import type { JobId } from '../../../../core/ids.ts';
import type { Job } from '../../../../core/job/job.ts';
import type { EstimatePolicy } from '../../../../core/labour/types.ts';
import { type Executed, openJobs } from '../../../../db/index.ts';
import { Ended } from '../../computing/ended.ts';
import { tellDefect } from '../../transport/tellDefect.ts';
import { type EstimateWanted, type Estimating, estimateNow, keepEstimate, wantedAfter } from './estimates.ts';
import { estimateEnquiry } from './firstEstimate.ts';

/** Estimates that follow what was done at jobs. No command waits for them: each figure is an entry of its own. */
export type Following = {
  /** Makes the estimate anew where that command changed it; what is computed for that job for longer is given up. */
  readonly follow: (asked: CommandRequest, done: Executed) => void;
  /** Takes up what an earlier run of the service left without its figures. */
  readonly takeUp: () => Promise<void>;
  /** What of a job's estimate is being computed; null when it stands. */
  readonly computing: (job: JobId) => Computing | null;
  /** Resolves when nothing is being computed any more. */
  readonly settled: () => Promise<void>;
  /** Gives up what is being computed, for good. */
  readonly end: () => Promise<void>;
};

/** The first figure at once, then better ones, each when the one before it stands. */
const POLICIES = ['ratio', 'one-step', 'two-step'] as const satisfies readonly EstimatePolicy[];

type ToMake = { readonly wanted: EstimateWanted; readonly from: EstimatePolicy };
type AtJob = {
  readonly toMake: ToMake[];
  computing: Computing | null;
  done: Promise<void>;
  /** Ends the wait for a quiet moment. */
  wake: () => void;
};

/** A look ahead waits until nothing has happened at a job for so long: whoever works on steps again within seconds. */
export type QuietMs = { readonly [looking in Exclude<EstimatePolicy, 'ratio'>]: number };
const QUIET_MS: QuietMs = { 'one-step': 1_000, 'two-step': 5_000 };

export function openFollowing(place: Estimating, quietMs: QuietMs = QUIET_MS): Following {
  const jobs = new Map<JobId, AtJob>();
  const over = new AbortController();
  const enquiries = new Set<Promise<void>>();

  const quiet = (at: AtJob, ms: number) =>
    new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, ms);
      at.wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  const make = async (at: AtJob, { wanted, from }: ToMake): Promise<void> => {
    const policies = POLICIES.slice(POLICIES.indexOf(from));
    for (const [n, policy] of policies.entries()) {
      // A first figure is owed for every moment; a better one only for the newest.
      const givenUp = () => over.signal.aborted || (policy !== 'ratio' && at.toMake.length > 0);
      if (policy !== 'ratio' && quietMs[policy] > 0 && !givenUp()) await quiet(at, quietMs[policy]);
      at.computing = policy;
      const estimated = await estimateNow(place, wanted, policy, givenUp, over.signal);
      if (!estimated) return;
      const last = estimated.figures.policy === 'none';
      at.computing = last ? null : (policies[n + 1] ?? null);
      await keepEstimate(place, wanted, estimated);
      if (last) return;
    }
  };
  const work = async (job: JobId, at: AtJob): Promise<void> => {
    for (let next = at.toMake.shift(); next && !over.signal.aborted; next = at.toMake.shift()) {
      try {
        await make(at, next);
      } catch (error) {
        tell(error);
      }
    }
    jobs.delete(job);
  };
  const add = (toMake: ToMake): void => {
    const { job } = toMake.wanted;
    const at = jobs.get(job);
    if (at) {
      at.toMake.push(toMake);
      at.wake();
      return;
    }
    const fresh: AtJob = { toMake: [toMake], computing: toMake.from, done: Promise.resolve(), wake: () => undefined };
    jobs.set(job, fresh);
    fresh.done = work(job, fresh);
  };

  const all = () => Promise.all([...enquiries, ...[...jobs.values()].map((at) => at.done)]);
  const ask = (estimated: Promise<void>): void => {
    const done = estimated.catch(tell).finally(() => enquiries.delete(done));
    enquiries.add(done);
  };

  return {
    follow: (asked, done) => {
      if (asked.name === 'enquire') return ask(estimateEnquiry(place, asked, done, over.signal));
      const wanted = wantedAfter(asked, done);
      if (wanted) add({ wanted, from: 'ratio' });
    },
    takeUp: async () => {
      const read = await place.shop.read();
      const by = (await read.load('shop')).staff[0]?.id;
      for (const id of by ? await openJobs(read) : []) {
        const job = await read.load('job', id);
        const owed = job && owedTo(job);
        if (by && owed) {
          const seed = owed.seed ?? seedOf(`${id}/${read.head}`);
          add({ wanted: { job: id, moment: owed.moment, by, seq: read.head, seed }, from: owed.from });
        }
      }
    },
    computing: (job) => jobs.get(job)?.computing ?? null,
    settled: async () => {
      while (jobs.size + enquiries.size > 0) await all();
    },
    end: async () => {
      over.abort();
      for (const at of jobs.values()) at.wake();
      await all();
    },
  };
}

/** What was ended on purpose is no defect. */
function tell(error: unknown): void {
  if (!(error instanceof Ended)) tellDefect('an estimate', error);
}

/** A figure that a job waits for: the first one of what was told or seen, or the look ahead after a first figure. */
function owedTo(job: Job): (Pick<EstimateWanted, 'moment'> & { seed: number | null; from: EstimatePolicy }) | null {
  const newest = job.estimates.at(-1);
  if (job.stage === 'first-power-on' && job.seen && newest?.moment !== 'seen')
    return { moment: 'seen', seed: null, from: 'ratio' };
  if (!newest) return job.stage === 'taken-in' ? { moment: 'told', seed: null, from: 'ratio' } : null;
  return newest.policy === 'ratio' ? { moment: newest.moment, seed: newest.seed, from: 'one-step' } : null;
}

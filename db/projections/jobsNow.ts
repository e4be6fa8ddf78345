import type { Enquired, EnquiryAnswer } from '../../core/job/enquiry.ts';
import type { TakenIn } from '../../core/job/entries.ts';
import { type Projection, type ReadTableWriter, type Seen, table } from './projection.ts';

/** Where every job and every enquiry stands, for the lists. */
export const jobsNow: Projection = {
  name: 'jobs-now',
  version: 1,
  tables: [
    table({
      name: 'job_now',
      columns: {
        job: 'text',
        owner: 'text',
        machine: 'text',
        tag: 'text',
        stage: 'text',
        stage_since: 'integer',
        taken_in: 'integer',
        promised: 'integer?',
        came_back_from: 'text?',
        last_seq: 'integer',
      },
      key: ['job'],
      keyRefused: 'job-already-taken-in',
      indexes: [['stage', 'stage_since'], ['owner'], ['machine']],
    }),
    table({
      name: 'enquiry_now',
      columns: { enquiry: 'text', stage: 'text', at: 'integer', lapses: 'integer', last_seq: 'integer' },
      key: ['enquiry'],
      keyRefused: 'enquiry-already-asked',
      indexes: [['stage', 'at']],
    }),
  ],
  apply: async (write, seen) => {
    const [subject, id] = seen.entry.stream.split(':');
    if (subject === 'job' && id) await applyToJob(write, seen, id);
    if (subject === 'enquiry' && id) await applyToEnquiry(write, seen, id);
  },
};

async function applyToJob(write: ReadTableWriter, { entry }: Seen, job: string): Promise<void> {
  const last_seq = entry.seq;
  if (entry.kind === 'taken-in') {
    const { owner, machine, tag, cameBackFrom } = entry.body as TakenIn;
    const now = {
      job,
      owner,
      machine,
      tag,
      stage: 'taken-in',
      stage_since: entry.at,
      taken_in: entry.at,
      promised: null,
    };
    await write.insert('job_now', { ...now, came_back_from: cameBackFrom, last_seq });
    return;
  }
  if (entry.kind === 'stage-entered') {
    const { stage } = entry.body as { readonly stage: string };
    await write.change('job_now', { job }, { stage, stage_since: entry.at, last_seq });
  } else if (entry.kind === 'promised') {
    const { at } = entry.body as { readonly at: number };
    await write.change('job_now', { job }, { promised: at, last_seq });
  } else {
    await write.change('job_now', { job }, { last_seq });
  }
}

async function applyToEnquiry(write: ReadTableWriter, { entry }: Seen, enquiry: string): Promise<void> {
  const last_seq = entry.seq;
  if (entry.kind === 'enquired') {
    const { lapsesAt } = entry.body as Enquired;
    await write.insert('enquiry_now', { enquiry, stage: 'asked', at: entry.at, lapses: lapsesAt, last_seq });
    return;
  }
  const stage = stageAfter(entry.kind, entry.body);
  await write.change('enquiry_now', { enquiry }, stage === null ? { last_seq } : { stage, last_seq });
}

function stageAfter(kind: string, body: unknown): string | null {
  if (kind === 'enquiry-lapsed') return 'lapsed';
  if (kind === 'enquiry-came') return 'came';
  if (kind === 'enquiry-answered')
    return (body as { readonly answer: EnquiryAnswer }).answer.says === 'no' ? 'turned-down' : 'asked';
  return null;
}

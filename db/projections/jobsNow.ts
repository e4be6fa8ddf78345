import { idIn, isStreamOf } from '../../core/entries/subjects.ts';
import type { EnquiryId, JobId } from '../../core/ids.ts';
import type { EnquiryStage } from '../../core/job/enquiry.ts';
import type { ReadEntry } from '../journal/readRow.ts';
import { type Projection, projectedTable, type ReadTableWriter } from './projection.ts';

/** Where every job and every enquiry stands, for the lists. */
export const jobsNow: Projection = {
  name: 'jobs-now',
  version: 2,
  tables: [
    projectedTable({
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
        first_seq: 'integer',
        last_seq: 'integer',
      },
      key: ['job'],
      keyRefused: 'job-already-taken-in',
      indexes: [['stage', 'stage_since'], ['owner'], ['machine']],
    }),
    projectedTable({
      name: 'enquiry_now',
      columns: {
        enquiry: 'text',
        stage: 'text',
        at: 'integer',
        lapses: 'integer',
        first_seq: 'integer',
        last_seq: 'integer',
      },
      key: ['enquiry'],
      keyRefused: 'enquiry-already-asked',
      indexes: [['stage', 'first_seq']],
    }),
  ],
  apply: async (write, { entry }) => {
    const { stream, seq } = entry;
    if (isStreamOf('job', stream)) await applyToJob(write, entry, idIn(stream), seq);
    if (isStreamOf('enquiry', stream)) await applyToEnquiry(write, entry, idIn(stream), seq);
  },
};

async function applyToJob(write: ReadTableWriter, entry: ReadEntry, job: JobId, last_seq: number) {
  switch (entry.kind) {
    case 'taken-in': {
      const { owner, machine, tag, cameBackFrom } = entry.body;
      const now = {
        job,
        owner,
        machine,
        tag,
        stage: 'taken-in',
        stage_since: entry.at,
        taken_in: entry.at,
        promised: null,
        first_seq: last_seq,
        last_seq,
      } as const;
      return write.insert('job_now', { ...now, came_back_from: cameBackFrom });
    }
    case 'stage-entered':
      return write.change('job_now', { job }, { stage: entry.body.stage, stage_since: entry.at, last_seq });
    case 'promised':
      return write.change('job_now', { job }, { promised: entry.body.at, last_seq });
    default:
      return write.change('job_now', { job }, { last_seq });
  }
}

async function applyToEnquiry(write: ReadTableWriter, entry: ReadEntry, enquiry: EnquiryId, last_seq: number) {
  if (entry.kind === 'enquired') {
    const { lapsesAt } = entry.body;
    const now = { at: entry.at, lapses: lapsesAt, first_seq: last_seq, last_seq };
    return write.insert('enquiry_now', { enquiry, stage: 'asked', ...now });
  }
  const stage = stageAfter(entry);
  return write.change('enquiry_now', { enquiry }, stage === null ? { last_seq } : { stage, last_seq });
}

function stageAfter(entry: ReadEntry): EnquiryStage | null {
  switch (entry.kind) {
    case 'enquiry-lapsed':
      return 'lapsed';
    case 'enquiry-came':
      return 'came';
    case 'enquiry-answered':
      return entry.body.answer.says === 'no' ? 'turned-down' : 'asked';
    default:
      return null;
  }
}

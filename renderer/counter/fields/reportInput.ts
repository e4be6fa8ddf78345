import type { Asked } from '../../../core/contract/contract.ts';
import type { JobId } from '../../../core/ids.ts';
import { hashOf } from './hashOf.ts';
import type { TakenReport } from './ReportField.tsx';

type ReadReportInput = Extract<Asked, { readonly name: 'readReport' }>['input'];

/** A machine's own report as the command takes it; an unanswered question about serial numbers is a no. */
export const reportInput = async (job: JobId, { text, taken, keepSerials }: TakenReport): Promise<ReadReportInput> => ({
  job,
  text,
  taken: taken.trim() || null,
  keepSerials: keepSerials === 'yes',
  digest: await hashOf(text),
});

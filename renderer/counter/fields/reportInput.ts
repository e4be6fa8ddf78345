import type { CommandRequest } from '../../../core/commands/asked.ts';
import type { JobId } from '../../../core/ids.ts';
import { hashOf } from './hashOf.ts';
import type { TakenReport } from './ReportField.tsx';

type ReadReportInput = CommandRequest<'readReport'>['input'];
type Said = Omit<ReadReportInput, 'job' | 'digest'>;

/** A machine's own report as it was read; an unanswered question about serial numbers is a no. */
export const reportSaid = ({ text, taken, keepSerials }: TakenReport): Said => ({
  text,
  taken: taken.trim() || null,
  keepSerials: keepSerials === 'yes',
});

/** The same as the command takes it, with the digest of its text. */
export const reportInput = async (job: JobId, report: TakenReport): Promise<ReadReportInput> => ({
  job,
  ...reportSaid(report),
  digest: await hashOf(report.text),
});

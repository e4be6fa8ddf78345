import type { CommandRequest } from '../../../core/commands/asked.ts';
import type { TakenReport } from './ReportField.tsx';

type ReadReportInput = CommandRequest<'readReport'>['input'];
type Said = Omit<ReadReportInput, 'job'>;

/** A machine's own report as it was read; an unanswered question about serial numbers is a no. */
export const reportSaid = ({ text, taken, keepSerials }: TakenReport): Said => ({
  text,
  taken: taken.trim() || null,
  keepSerials: keepSerials === 'yes',
});

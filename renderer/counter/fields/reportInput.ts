import type { Asked } from '../../../core/contract/contract.ts';
import type { JobId } from '../../../core/ids.ts';
import { ownReportOf } from '../../../core/readings/ownReportOf.ts';
import { service } from '../../link/service.ts';
import { hashOf } from './hashOf.ts';
import type { ReportText } from './ReportField.tsx';

type ReadReportInput = Extract<Asked, { readonly name: 'readReport' }>['input'];

/** A machine's own report as the command keeps it: its text, what was read from it, when it was taken. */
export async function reportInput(job: JobId, { text, taken }: ReportText): Promise<ReadReportInput> {
  const report = ownReportOf(await service.readReport({ text }));
  return {
    job,
    text,
    taken: taken.trim() || null,
    report: {
      ...report,
      processors: [...report.processors],
      memory: [...report.memory],
      gaps: [...report.gaps],
    },
    digest: await hashOf(text),
  };
}

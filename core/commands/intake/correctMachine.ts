import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issueAnew } from '../papers/issue.ts';

/** Puts right what a machine is called and its serial number; receipt and tag are issued anew where they were given out. */
export const correctMachine = jobCommand(
  'correct-machine',
  z.strictObject({ job: zJobId, called: zLine, serial: zLine.nullable() }),
  OPEN_STAGES,
  (view, { called, serial }, asking) => {
    const { machine, job } = view;
    if (!machine) return refuse('no-such-machine', { machine: job.machine });
    if (machine.called === called && (machine.serial?.value ?? null) === serial) return refuse('nothing-to-write');
    const unit = openUnitOfWork(view, asking);
    unit.add(`machine:${machine.id}`, 'machine-corrected', {
      called: personal('record', job.owner, called),
      serial: serial === null ? null : personal('readings', job.owner, serial),
    });
    issueAnew(unit, ['intake-receipt', 'bench-tag'], asking);
    return unit.accept();
  },
  () => ({ papers: ['intake-receipt', 'bench-tag'] }),
);

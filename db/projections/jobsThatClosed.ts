import type { Switches } from '../../core/custody/machine.ts';
import { idIn, isStreamOf } from '../../core/entries/subjects.ts';
import type { JobId, MachineId } from '../../core/ids.ts';
import { closedFacts } from '../../core/job/bench/closedFacts.ts';
import type { ReadEntry } from '../journal/readRow.ts';
import { factsText } from './factsText.ts';
import { type Projection, projectedTable, type ReadTableWriter } from './projection.ts';

/**
 * Jobs that went home, with what is learnt from them and reckoned up, and what was answered of their machines' switches: so
 * that nobody folds their histories for it. What was taken in by mistake says nothing of the shop's work, and has no row;
 * nor has a job of which an entry cannot be read.
 */
export const jobsThatClosed: Projection = {
  name: 'closed-jobs',
  version: 1,
  tables: [
    projectedTable({
      name: 'closed_job',
      columns: { job: 'text', machine: 'text', taken_in: 'integer', entries: 'integer', facts: 'text' },
      key: ['job'],
      keyRefused: 'job-already-taken-in',
      indexes: [['taken_in', 'job']],
    }),
    projectedTable({
      name: 'machine_told',
      columns: { machine: 'text', switches: 'text' },
      key: ['machine'],
      keyRefused: 'machine-is-here',
    }),
  ],
  apply: async (write, { entry }) => {
    if (entry.kind === 'switches-answered') await answerSwitches(write, idIn(entry.stream), entry.body.switches);
  },
  settle: async (write, { stream, entries }, folded) => {
    if (!isStreamOf('job', stream)) return;
    const job = idIn(stream);
    if (!entries.some(wentHome) && !(await isClosed(write, job))) return;
    const { state, version, unreadable } = await folded('job', stream);
    await write.remove('closed_job', { job });
    if (state?.stage !== 'gone-home' || state.cancelled || unreadable.length > 0) return;
    const facts = factsText(closedFacts(state));
    await write.insert('closed_job', {
      job,
      machine: state.machine,
      taken_in: state.takenInAt,
      entries: version,
      facts,
    });
  },
};

const wentHome = (entry: ReadEntry) => entry.kind === 'stage-entered' && entry.body.stage === 'gone-home';

/** Later answers stand over earlier ones, switch by switch. */
async function answerSwitches(write: ReadTableWriter, machine: MachineId, switches: Switches): Promise<void> {
  const before = await write.rows
    .selectFrom('machine_told')
    .where('machine', '=', machine)
    .select('switches')
    .executeTakeFirst();
  const told: Switches = before ? JSON.parse(before.switches) : {};
  const now = { machine, switches: JSON.stringify({ ...told, ...switches }) };
  if (before) await write.change('machine_told', { machine }, now);
  else await write.insert('machine_told', now);
}

async function isClosed(write: ReadTableWriter, job: JobId): Promise<boolean> {
  return (
    (await write.rows.selectFrom('closed_job').where('job', '=', job).select('job').executeTakeFirst()) !== undefined
  );
}

import { useState } from 'react';
import { useNavigate } from 'react-router';
import type { ConsentId } from '../../../core/approval/consent.ts';
import type { JobId } from '../../../core/ids.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { useExecute } from '../../link/useExecute.ts';
import { hashOf } from '../fields/hashOf.ts';
import { reportInput } from '../fields/reportInput.ts';
import { signedInput } from '../fields/signedInput.ts';
import { signedAlone } from './ConsentRow.tsx';
import type { LivePapers } from './livePapers.ts';
import { beforeAsked, signerOf, type TakingInSheet } from './sheet.ts';
import type { Marks } from './sheetContext.tsx';
import { beforeInput, momentOf, takeInInput } from './takeInInput.ts';
import { useKeptPhotographs } from './useKeptPhotographs.ts';

/**
 * Takes the machine in as the sheet says, step by step: taken in, promised, asked, signed. What is done is noted on the
 * sheet, so that a step that was refused is put right and the rest goes on from there, never twice.
 */
export function useTakeIn(onStep: (made: NonNullable<TakingInSheet['made']>) => void, onDone: () => void) {
  const { execute, problem, busy } = useExecute();
  const [running, setRunning] = useState(false);
  const kept = useKeptPhotographs();
  const go = useNavigate();

  const run = async (sheet: TakingInSheet, marks: Marks, settings: ShopSettings, papers: LivePapers) => {
    const { sheet: under } = marks;
    if (!under) return;
    setRunning(true);
    try {
      const job = sheet.made?.job ?? (await takeIn(sheet, settings));
      if (!job) return;
      let made = sheet.made ?? { job, done: [] };
      onStep(made);
      for (const step of await steps(job as JobId, sheet, marks, settings, papers)) {
        if (made.done.includes(step.id)) continue;
        if (!(await step.run())) return;
        made = { job, done: [...made.done, step.id] };
        onStep(made);
      }
      onDone();
      await go(`/counter/${job}`);
    } finally {
      setRunning(false);
    }
  };

  async function takeIn(sheet: TakingInSheet, settings: ShopSettings): Promise<string | null> {
    const done = await execute('takeIn', takeInInput(sheet, settings.language, settings.zone));
    return done ? done.firstStream.slice('job:'.length) : null;
  }

  async function steps(job: JobId, sheet: TakingInSheet, marks: Marks, settings: ShopSettings, papers: LivePapers) {
    const at = momentOf(sheet.promise, settings.zone);
    const name = signerOf(sheet.owner);
    const alone = signedAlone(sheet);
    const contentHash = await hashOf([papers.receipt, papers.consents]);
    const shared = Object.fromEntries(
      Object.entries(sheet.answers).filter(([id]) => !alone.includes(id as ConsentId)),
    ) as TakingInSheet['answers'];
    const { report } = sheet;
    return [
      ...(at === null ? [] : [{ id: 'promise', run: () => execute('promise', { job, at, p90: at, told: true }) }]),
      ...(beforeAsked(sheet.before)
        ? [{ id: 'before', run: () => execute('addBeforeFirstScrew', { job, ...beforeInput(sheet.before) }) }]
        : []),
      ...(report === null
        ? []
        : [{ id: 'report', run: async () => execute('readReport', await reportInput(job, report)) }]),
      {
        id: 'sign',
        run: async () => {
          const photographs = await kept.of(job, sheet.photographs);
          if (!marks.sheet || !photographs) return null;
          return execute('signSheet', {
            job,
            answers: shared,
            photographs: [...photographs],
            signed: signedInput(marks.sheet, name),
            contentHash,
          });
        },
      },
      ...alone.map((id) => ({
        id: `alone-${id}`,
        run: async () => {
          const mark = marks[id];
          return (
            mark &&
            execute('signAlone', {
              job,
              id,
              answer: id === 'data-parts' ? 'send' : 'yes',
              about: id === 'risk' ? sheet.riskAbout.trim() || null : null,
              signed: signedInput(mark, name),
              contentHash,
            })
          );
        },
      })),
    ];
  }

  return { run, problem: kept.problem ?? problem, busy: busy || running };
}

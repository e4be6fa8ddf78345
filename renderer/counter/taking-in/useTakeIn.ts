import { useState } from 'react';
import { useNavigate } from 'react-router';
import { useExecute } from '../../link/useExecute.ts';
import { signedInput } from '../fields/signedInput.ts';
import { signerOf, type TakingInSheet } from './sheet.ts';
import type { SignedMarks } from './sheetContext.tsx';
import type { SignTakingInInput } from './signTakingInInput.ts';
import { useKeptPhotographs } from './useKeptPhotographs.ts';

/** Takes the machine in as the sheet says and has it signed, all of it at once or nothing. */
export function useTakeIn(onDone: () => void) {
  const { execute, problem, refusal, busy, forget } = useExecute();
  const [running, setRunning] = useState(false);
  const kept = useKeptPhotographs();
  const go = useNavigate();

  const signed = async (sheet: TakingInSheet, marks: SignedMarks, input: SignTakingInInput): Promise<string | null> => {
    const photographs = await kept.of(sheet.owner.known ?? sheet.ownerId, sheet.photographs);
    const under = marks.sheet;
    if (!under || !photographs) return null;
    const name = signerOf(sheet.owner);
    const done = await execute('signTakingIn', {
      ...input,
      photographs: [...photographs],
      alone: input.alone.map((line) => {
        const mark = marks[line.id];
        return mark ? { ...line, signed: signedInput(mark, name) } : line;
      }),
      signed: signedInput(under, name),
    });
    return done?.firstStream.slice('job:'.length) ?? null;
  };
  const run = async (sheet: TakingInSheet, marks: SignedMarks, input: SignTakingInInput): Promise<void> => {
    setRunning(true);
    try {
      const job = await signed(sheet, marks, input);
      if (job === null) return;
      onDone();
      await go(`/counter/${job}?print=bench-tag`);
    } finally {
      setRunning(false);
    }
  };

  return { run, problem: kept.problem ?? problem, refusal, forget, busy: busy || running };
}

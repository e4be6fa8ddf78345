import { useState } from 'react';
import refusals from '../../../assets/words/en/refusals.json';
import { type Words, wordsFor } from '../../../core/text/wordsFor.ts';
import { service } from '../../link/service.ts';
import { wordsOfError } from '../../link/useExecute.ts';
import type { TakingInSheet } from './sheet.ts';

type Photographs = TakingInSheet['photographs'];

/** Seals the photographs of a sheet under its owner's key; null when one could not be, then `problem` says why. */
export function useKeptPhotographs(): {
  readonly problem: Words | null;
  readonly of: (job: string, held: Photographs) => Promise<Photographs | null>;
} {
  const [problem, setProblem] = useState<Words | null>(null);
  return {
    problem,
    of: async (job, held) => {
      setProblem(null);
      const kept: { of: string; blob: string }[] = [];
      for (const { of, blob } of held) {
        try {
          const stored = await service.keepHeldPhotograph({ job, held: blob });
          if ('refused' in stored) {
            setProblem(wordsFor(stored, refusals));
            return null;
          }
          kept.push({ of, blob: stored.blob });
        } catch (error) {
          setProblem(wordsOfError(error));
          return null;
        }
      }
      return kept;
    },
  };
}

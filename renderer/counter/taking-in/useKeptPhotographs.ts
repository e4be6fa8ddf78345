import { useState } from 'react';
import type { OwnerId } from '../../../core/ids.ts';
import type { RefusalWords } from '../../../core/text/wordsFor.ts';
import { wordsOfError } from '../../link/refusalWords.ts';
import { service } from '../../link/service.ts';
import type { TakingInSheet } from './sheet.ts';

type Photographs = TakingInSheet['photographs'];

/** Seals the photographs of a sheet under its owner's key; null when one could not be, then `problem` says why. */
export function useKeptPhotographs(): {
  readonly problem: RefusalWords | null;
  readonly of: (owner: OwnerId, held: Photographs) => Promise<Photographs | null>;
} {
  const [problem, setProblem] = useState<RefusalWords | null>(null);
  return {
    problem,
    of: async (owner, held) => {
      setProblem(null);
      try {
        return await Promise.all(
          held.map(async ({ of, blob }) => ({
            of,
            blob: (await service.keepHeldPhotograph({ owner, held: blob })).blob,
          })),
        );
      } catch (error) {
        setProblem(wordsOfError(error));
        return null;
      }
    },
  };
}

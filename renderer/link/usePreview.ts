import { useQuery } from '@tanstack/react-query';
import { useRef } from 'react';
import type { CommandName } from '../../core/commands/commands.ts';
import type { Previewed } from '../../core/contract/previewed.ts';
import type { Refusal } from '../../core/refusal.ts';
import type { RefusalWords } from '../../core/text/wordsFor.ts';
import { useWhoIsHere } from '../whoIsHere.tsx';
import { wordsOfRefusal } from './refusalWords.ts';
import { service } from './service.ts';
import type { InputOf } from './useExecute.ts';

/** What a command would come to, as it is shown before it is carried out. */
export type Preview = {
  /** The newest that there was: it stands while another one is asked for, or while it would be refused. */
  readonly shown: Previewed | null;
  /** Why it would be refused now. */
  readonly problem: RefusalWords | null;
  /** It is of the input as it stands. */
  readonly settled: boolean;
};

const KEPT_MS = 1_000;
const FOLLOWS = { streams: ['shop', 'job:', 'machine:', 'part:', 'owner:', 'enquiry:', 'paper:'] };

/** Asks what a command would come to, and again whenever its input or the shop changes; null asks nothing yet. */
export function usePreview<Name extends CommandName>(name: Name, input: InputOf<Name> | null): Preview {
  const { staff } = useWhoIsHere();
  const answer = useQuery({
    queryKey: ['preview', staff.id, name, input],
    queryFn: ({ signal }) => service.preview({ by: staff.id, name, input }, { signal }),
    enabled: input !== null,
    gcTime: KEPT_MS,
    meta: { follows: FOLLOWS },
  });
  const newest = useRef<Previewed | null>(null);
  if (input === null) newest.current = null;
  if (isShown(answer.data)) newest.current = answer.data;
  return {
    shown: newest.current,
    problem: answer.data && !isShown(answer.data) ? wordsOfRefusal(answer.data) : null,
    settled: answer.data !== undefined,
  };
}

const isShown = (answer: Previewed | Refusal | undefined): answer is Previewed =>
  answer !== undefined && !('refused' in answer);

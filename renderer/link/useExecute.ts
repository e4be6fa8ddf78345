import { isDefinedError } from '@orpc/client';
import { useCallback, useRef, useState } from 'react';
import type { Inputs } from '../../core/commands/asked.ts';
import type { CommandName } from '../../core/commands/commands.ts';
import type { CommandResult } from '../../core/contract/contract.ts';
import { staffId } from '../../core/ids.ts';
import type { Refusal } from '../../core/refusal.ts';
import type { RefusalWords } from '../../core/text/wordsFor.ts';
import { useWhoIsHere } from '../whoIsHere.tsx';
import { hereAgain } from './here.ts';
import { isInputError, refusalIn, wordsOfError } from './refusalWords.ts';
import { service } from './service.ts';

export type InputOf<Name extends CommandName> = Inputs[Name];

/** Carries a command out. Answers what was done, or null when it was refused: then `problem` says why in words. */
export type Execute = {
  readonly execute: <Name extends CommandName>(name: Name, input: InputOf<Name>) => Promise<CommandResult | null>;
  readonly problem: RefusalWords | null;
  /** The same with its facts; null where it was no refusal. */
  readonly refusal: Refusal | null;
  readonly busy: boolean;
  readonly forget: () => void;
};

/** A command as it goes out: its name and input were typed by whoever pressed. */
type Sent = Parameters<typeof service.execute>[0];

const MOST_TRIES = 3;

/** What tells that this screen is not as it is shown: somebody else is in, or nobody any more. */
const IS_ANOTHER: ReadonlySet<string> = new Set(['not-who-is-here', 'person-gone', 'screen-locked']);

/**
 * Asks the shop to do something in the name of whoever is here. A lost answer is asked for again under the same id, also by
 * the next press of the very same: it may have been done, and is not done twice.
 */
export function useExecute(): Execute {
  const { staff } = useWhoIsHere();
  const [problem, setProblem] = useState<RefusalWords | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [busy, setBusy] = useState(false);
  const unanswered = useRef<Sent | null>(null);
  const execute: Execute['execute'] = useCallback(
    async (name, input) => {
      setBusy(true);
      const fresh: Sent = { command: crypto.randomUUID(), by: staff.id, name, input };
      const asked = isSamePress(unanswered.current, fresh) ? unanswered.current : fresh;
      unanswered.current = asked;
      try {
        const done = await askAgain(asked);
        unanswered.current = null;
        setProblem(null);
        setRefusal(null);
        return done;
      } catch (error) {
        if (isAnswer(error)) unanswered.current = null;
        if (IS_ANOTHER.has(refusalIn(error)?.refused ?? '')) void hereAgain();
        setProblem(wordsOfError(error));
        setRefusal(refusalIn(error));
        return null;
      } finally {
        setBusy(false);
      }
    },
    [staff.id],
  );
  const forget = () => {
    setProblem(null);
    setRefusal(null);
  };
  return { execute, problem, refusal, busy, forget };
}

async function askAgain(asked: Sent, tries = MOST_TRIES): Promise<CommandResult> {
  try {
    return await service.execute(asked);
  } catch (error) {
    const unknown = refusalIn(error)?.refused === 'nobody-is-here';
    if (tries <= 1 || (isAnswer(error) && !(unknown && (await isBelieved(asked))))) throw error;
    return askAgain(asked, tries - 1);
  }
}

/** A service that was started anew knows nobody yet. In a shop without PINs it is told who is here; else they come in again. */
async function isBelieved({ by }: Sent): Promise<boolean> {
  try {
    await service.enter({ who: staffId(by), pin: null });
    return true;
  } catch {
    await hereAgain();
    return false;
  }
}

/** The service answered, and said no. */
const isAnswer = (error: unknown): boolean => isDefinedError(error) || isInputError(error);

/** Is it the press whose answer was lost, asked for once more: the same by the same hand, to the letter? */
const isSamePress = (before: Sent | null, now: Sent): before is Sent =>
  before !== null &&
  before.name === now.name &&
  before.by === now.by &&
  JSON.stringify(before.input) === JSON.stringify(now.input);

import { useCallback, useRef, useState } from 'react';
import type { Inputs } from '../../core/commands/asked.ts';
import type { CommandName } from '../../core/commands/commands.ts';
import type { CommandResult } from '../../core/contract/contract.ts';
import type { StaffId } from '../../core/ids.ts';
import type { Refusal } from '../../core/refusal.ts';
import type { RefusalWords } from '../../core/text/wordsFor.ts';
import { useWhoIsHere } from '../whoIsHere.tsx';
import { hereAgain } from './here.ts';
import { refusalIn, wordsOfError } from './refusalWords.ts';
import { isAnswer, type Sent, send } from './send.ts';

export type InputOf<Name extends CommandName> = Inputs[Name];

/** What a press came to: done, or why not in words. */
export type Pressed = { readonly done: CommandResult } | { readonly problem: RefusalWords };

/** Carries a command out. Answers what was done, or null when it was refused: then `problem` says why in words. */
export type Execute = {
  readonly execute: <Name extends CommandName>(name: Name, input: InputOf<Name>) => Promise<CommandResult | null>;
  /** The same, for whoever says by themselves why not. */
  readonly press: <Name extends CommandName>(name: Name, input: InputOf<Name>) => Promise<Pressed>;
  readonly problem: RefusalWords | null;
  /** The same with its facts; null where it was no refusal. */
  readonly refusal: Refusal | null;
  readonly busy: boolean;
  readonly forget: () => void;
};

/** What tells that this screen is not as it is shown: somebody else is in, or nobody any more. */
const IS_ANOTHER: ReadonlySet<string> = new Set(['not-who-is-here', 'person-gone', 'screen-locked']);

/** Asks the shop to do something in the name of whoever is here. */
export const useExecute = (): Execute => useExecuteAs(useWhoIsHere().staff.id);

/**
 * The same in the name of somebody who is said. A lost answer is asked for again under the same id, also by the next press
 * of the very same: it may have been done, and is not done twice.
 */
export function useExecuteAs(by: StaffId): Execute {
  const [problem, setProblem] = useState<RefusalWords | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [busy, setBusy] = useState(false);
  const unanswered = useRef<Sent | null>(null);
  const press: Execute['press'] = useCallback(
    async (name, input) => {
      setBusy(true);
      const fresh: Sent = { command: crypto.randomUUID(), by, name, input };
      const asked = isSamePress(unanswered.current, fresh) ? unanswered.current : fresh;
      unanswered.current = asked;
      try {
        const done = await send(asked);
        unanswered.current = null;
        setProblem(null);
        setRefusal(null);
        return { done };
      } catch (error) {
        if (isAnswer(error)) unanswered.current = null;
        if (IS_ANOTHER.has(refusalIn(error)?.refused ?? '')) void hereAgain();
        const says = wordsOfError(error);
        setProblem(says);
        setRefusal(refusalIn(error));
        return { problem: says };
      } finally {
        setBusy(false);
      }
    },
    [by],
  );
  const execute: Execute['execute'] = useCallback(
    async (name, input) => {
      const pressed = await press(name, input);
      return 'done' in pressed ? pressed.done : null;
    },
    [press],
  );
  const forget = () => {
    setProblem(null);
    setRefusal(null);
  };
  return { execute, press, problem, refusal, busy, forget };
}

/** Is it the press whose answer was lost, asked for once more: the same by the same hand, to the letter? */
const isSamePress = (before: Sent | null, now: Sent): before is Sent =>
  before !== null &&
  before.name === now.name &&
  before.by === now.by &&
  JSON.stringify(before.input) === JSON.stringify(now.input);

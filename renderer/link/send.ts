import { isDefinedError } from '@orpc/client';
import type { CommandResult } from '../../core/contract/contract.ts';
import { staffId } from '../../core/ids.ts';
import { hereAgain } from './here.ts';
import { isInputError, refusalIn } from './refusalWords.ts';
import { service } from './service.ts';

/** A command as it goes out: its name and input were typed by whoever pressed. */
export type Sent = Parameters<typeof service.execute>[0];

const MOST_TRIES = 3;

/**
 * Sends a command. A lost answer is asked for again under the same id: it may have been done, and is not done twice.
 * @throws What the service answered, a refusal in words of its own; or that nothing answered.
 */
export async function send(asked: Sent, tries = MOST_TRIES): Promise<CommandResult> {
  try {
    return await service.execute(asked);
  } catch (error) {
    const unknown = refusalIn(error)?.refused === 'nobody-is-here';
    if (tries <= 1 || (isAnswer(error) && !(unknown && (await isBelieved(asked))))) throw error;
    return send(asked, tries - 1);
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
export const isAnswer = (error: unknown): boolean => isDefinedError(error) || isInputError(error);

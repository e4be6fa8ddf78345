import type { z } from 'zod';
import { COMMANDS, type CommandName } from './commands.ts';
import type { Command } from './kernel/command.ts';

/** What each command takes, once its shape has let it through. */
export type Inputs = { readonly [Name in CommandName]: z.output<(typeof COMMANDS)[Name]['input']> };

/** A command's name with its own input. */
type NamedInput<Name extends CommandName = CommandName> = {
  readonly [N in Name]: { readonly name: N; readonly input: Inputs[N] };
}[Name];

/** A command that is only looked at: who would ask, which one, and its input. */
export type PreviewAsked<Name extends CommandName = CommandName> = NamedInput<Name> & { readonly by: string };

/** What an asker sends, typed by the command's name. */
export type CommandRequest<Name extends CommandName = CommandName> = PreviewAsked<Name> & { readonly command: string };

const TABLE: { readonly [Name in CommandName]: Command<string, Inputs[Name]> } = COMMANDS;

/** The command of that name, with its input's own type. */
export const commandNamed = <Name extends CommandName>(name: Name): Command<string, Inputs[Name]> => TABLE[name];

/** A name with what was asked under it, checked by that command's own shape; or what is wrong with it, by field. */
export function checkedInput<Name extends CommandName>(
  name: Name,
  given: unknown,
): NamedInput<Name> | { readonly wrong: readonly z.core.$ZodIssue[] } {
  const checked = commandNamed(name).input.safeParse(given);
  if (!checked.success) return { wrong: checked.error.issues };
  const named: NamedInput<Name> = { name, input: checked.data };
  return named;
}

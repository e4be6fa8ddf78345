import { backup } from './backups/backup.ts';
import { restore } from './backups/restore.ts';
import { restoreWords } from './backups/restoreWords.ts';
import { books } from './books.ts';
import { cases } from './cases.ts';
import type { CliCommand } from './command.ts';
import { demo } from './demo.ts';
import { goOn } from './goOn.ts';
import { model } from './model.ts';
import { next } from './next.ts';
import { papers } from './papers.ts';
import { parts } from './parts.ts';
import { person } from './persons.ts';
import { plan } from './plan.ts';
import { read } from './read.ts';
import { serve } from './serve.ts';
import { tags } from './tags.ts';
import { verify } from './verify.ts';

/** The one list of the command line's commands: a new one is a file beside this and a line here. */
export const COMMAND_LIST: readonly CliCommand[] = [
  demo,
  model,
  plan,
  next,
  cases,
  read,
  papers,
  parts,
  tags,
  books,
  verify,
  backup,
  restore,
  restoreWords,
  goOn,
  person,
  serve,
];

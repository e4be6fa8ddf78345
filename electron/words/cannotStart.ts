import { fill } from '../../core/text/wordsFor.ts';
import type { StartRefusal } from '../service/backing.ts';
import { shellWords } from './shellWords.ts';

/** Why the shop cannot be opened, in words: the reason, where, that nothing was changed, and what can be done. */
export type CannotStart = {
  readonly says: string;
  readonly path: string;
  readonly unchanged: string;
  readonly ways: readonly string[];
};

type Reason = { readonly says: string; readonly ways: readonly string[] };

/** A reason without words here does not compile. */
const REASONS: Readonly<Record<StartRefusal['refused'], Reason>> = shellWords.cannotStart.reasons;

/** Words for a refusal to open. */
export function cannotStart(refusal: StartRefusal): CannotStart {
  const reason = REASONS[refusal.refused];
  return {
    says: fill(reason.says, refusal),
    path: refusal.path,
    unchanged: shellWords.cannotStart.unchanged,
    ways: reason.ways.map((way) => fill(way, refusal)),
  };
}

/** The same as plain text, for a terminal. */
export function cannotStartText(refusal: StartRefusal): string {
  const { says, path, unchanged, ways } = cannotStart(refusal);
  const { title, where, waysOut } = shellWords.cannotStart;
  const listed = ways.map((way, index) => `  ${index + 1}. ${way}`);
  return [`${title}.`, says, `${where}: ${path}`, unchanged, `${waysOut}:`, ...listed].join('\n');
}

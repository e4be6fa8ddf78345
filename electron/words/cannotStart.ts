import { fill, shellWords } from './shellWords.ts';

/** Why the shop cannot be opened, in words: the reason, where, that nothing was changed, and what can be done. */
export type CannotStart = {
  readonly says: string;
  readonly path: string;
  readonly unchanged: string;
  readonly ways: readonly string[];
};

type Reason = { readonly says: string; readonly ways: readonly string[] };

/** Words for a refusal to open. One without words of its own still says its name, the path and two ways out. */
export function cannotStart(refusal: { readonly refused: string; readonly path: string }): CannotStart {
  const { reasons, unchanged } = shellWords.cannotStart;
  const known: Readonly<Record<string, Reason>> = reasons;
  const reason = known[refusal.refused] ?? reasons.unknown;
  return {
    says: fill(reason.says, refusal),
    path: refusal.path,
    unchanged,
    ways: reason.ways.map((way) => fill(way, refusal)),
  };
}

/** The same as plain text, for a terminal. */
export function cannotStartText(refusal: { readonly refused: string; readonly path: string }): string {
  const { says, path, unchanged, ways } = cannotStart(refusal);
  const { title, where, waysOut } = shellWords.cannotStart;
  const listed = ways.map((way, index) => `  ${index + 1}. ${way}`);
  return [`${title}.`, says, `${where}: ${path}`, unchanged, `${waysOut}:`, ...listed].join('\n');
}

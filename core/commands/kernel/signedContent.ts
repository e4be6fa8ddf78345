import type { View } from '../../entries/view.ts';
import { canonicalJson } from '../../journal/canonicalJson.ts';
import type { Paper } from '../../papers/content.ts';
import { epochMs } from '../../time.ts';
import type { Asking } from './asking.ts';
import { contentHashesIn, withoutSignatures } from './contentHashes.ts';
import type { Decision } from './decision.ts';
import { refuse } from './decision.ts';

/** Decides one command's input on a view. */
export type Decide<Input> = (view: View, input: Input, asking: Asking) => Decision;

/**
 * What whoever signs stands under: the papers the command would issue, what was said to it (its input without the
 * signatures, each photograph as SHA-256 of its picture), and SHA-256 of the canonical JSON of both, in hex.
 */
export type Content = { readonly papers: readonly Paper[]; readonly said: unknown; readonly contentHash: string };

/**
 * When content is made: the millisecond after. Nothing that was written bears it, so that whatever does is of this very
 * command, and is shown by its day alone.
 */
export const contentAt = (at: Asking['at']): Asking['at'] => epochMs(at + 1);

/**
 * The content of an accepted decision that was made at `contentAt`: all sheets it would issue (tags hang on things and
 * are signed by nobody), and the input it was made of. Not all that binds stands on a paper, so a signature covers both.
 */
export function contentOf(
  command: string,
  input: unknown,
  decision: Extract<Decision, { ok: true }>,
  asking: Asking,
): Content {
  const papers = decision.shown.map((make) => make()).filter((paper) => paper.shape === 'sheet');
  const said = withoutSignatures(input, asking.pictures);
  return { papers, said, contentHash: asking.sha256(canonicalJson({ command, papers, said })) };
}

/**
 * Accepts a decision only where every signature in the input names the content it makes, and that shows a paper to stand
 * under. Refused: `content-not-named`, `nothing-shown`, `content-changed` with what differs.
 */
export function bound<Input>(name: string, decide: Decide<Input>): Decide<Input> {
  return (view, input, asking) => {
    const decision = decide(view, input, asking);
    const named = contentHashesIn(input);
    if (!decision.ok || named.length === 0) return decision;
    if (named.some((hash) => hash === null || hash === '')) return refuse('content-not-named', { command: name });
    const then = { ...asking, at: contentAt(asking.at) };
    const again = decide(view, input, then);
    if (!again.ok) return again;
    const content = contentOf(name, input, again, then);
    if (content.papers.length === 0) return refuse('nothing-shown', { command: name });
    return named.every((hash) => hash === content.contentHash)
      ? decision
      : refuse('content-changed', { signed: named.find((hash) => hash !== content.contentHash), ...content });
  };
}

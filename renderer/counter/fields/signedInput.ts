import type { Strokes } from '../../../core/approval/signature.ts';
import type { Content } from '../../../core/commands/kernel/signedContent.ts';
import type { SignatureMark } from '../../kit/paper/SignaturePad.tsx';
import type { Preview } from '../../link/usePreview.ts';

/** A signature with what was shown when it was given: it stands under that and nothing else. */
export type Signed = { readonly mark: SignatureMark; readonly under: Content };

/** Is there a paper to sign under, that would be issued now? */
export const isPaperShown = ({ shown, problem }: Pick<Preview, 'shown' | 'problem'>): boolean =>
  shown !== null && shown.papers.length > 0 && problem === null;

type StrokesInput = {
  width: number;
  height: number;
  strokes: [number, number, number][][];
};
type SignedInput = { name: string; drawn: StrokesInput | null; contentHash: string | null };

const sameName = (a: string, b: string): boolean =>
  a.trim().replace(/\s+/g, ' ').toLowerCase() === b.trim().replace(/\s+/g, ' ').toLowerCase();

/** Has whoever the line names signed? A typed name counts when it is the name on the line. */
export const isSignedBy = (signed: Signed | null | undefined, name: string): signed is Signed =>
  signed != null && (signed.mark.by === 'hand' || sameName(signed.mark.name, name));

/** A signature as a command takes it: the name, the strokes where a hand drew, and the hash of what was shown. */
export function signedInput({ mark, under }: Signed, name: string): SignedInput {
  const drawn = mark.by === 'typed' ? null : strokesInput(mark.strokes);
  return { name: name.trim(), drawn, contentHash: under.contentHash };
}

/** The same before anything is signed: what is asked for to be shown. */
export const toSign = (name: string): SignedInput => ({ name: name.trim(), drawn: null, contentHash: null });

const strokesInput = ({ width, height, strokes }: Strokes): StrokesInput => ({
  width,
  height,
  strokes: strokes.map((stroke) => stroke.map(([x, y, at]): [number, number, number] => [x, y, at])),
});

import type { Strokes } from '../../../core/approval/signature.ts';
import type { SignatureMark } from '../../kit/paper/SignaturePad.tsx';

type StrokesInput = {
  width: number;
  height: number;
  strokes: [number, number, number][][];
};

/** A signature as a command takes it: the name, and the strokes where a hand drew. */
export function signedInput(mark: SignatureMark, name: string): { name: string; drawn: StrokesInput | null } {
  if (mark.by === 'typed') return { name: mark.name.trim(), drawn: null };
  return { name, drawn: strokesInput(mark.strokes) };
}

const strokesInput = ({ width, height, strokes }: Strokes): StrokesInput => ({
  width,
  height,
  strokes: strokes.map((stroke) => stroke.map(([x, y, at]): [number, number, number] => [x, y, at])),
});

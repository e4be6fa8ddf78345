import type { Strokes } from '../../../core/approval/signature.ts';

/** A hand's curve, for a sheet that nobody signs: three strokes of a made-up name. */
export const drawnSignature: Strokes = {
  width: 600,
  height: 160,
  strokes: [0, 1, 2].map((stroke) =>
    Array.from({ length: 40 }, (_, at): [number, number, number] => [
      40 + stroke * 170 + at * 4,
      80 + 40 * Math.sin(at / (3 + stroke)) * (1 - at / 60),
      stroke * 600 + at * 12,
    ]),
  ),
};

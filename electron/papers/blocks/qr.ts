import bwip from 'bwip-js/node';
import type { QrCode } from '../../../core/papers/content.ts';
import { INK } from '../measures.ts';
import type { Pen } from '../pen.ts';
import type { Branch } from '../structure.ts';

type Matrix = { readonly pixs: readonly number[]; readonly pixx: number; readonly pixy: number };

/** ISO/IEC 18004 modules, row by row; level M mends about 15 in 100 of the code. */
function matrixOf(text: string): Matrix {
  const [matrix] = bwip.raw('qrcode', text, 'eclevel=M');
  if (!matrix || !('pixs' in matrix)) throw new Error(`No QR code can be made of "${text}".`);
  return matrix;
}

/** White that a code of this size needs on every side: four modules, by ISO/IEC 18004. */
export const quietZone = (code: QrCode, side: number): number => (4 * side) / matrixOf(code.text).pixx;

/** A square on the page in points: its upper left corner, and how long a side is. */
export type Square = { readonly x: number; readonly y: number; readonly side: number };

/** Draws the code as filled rectangles, one a run of dark modules. The white around it is the page's. */
export function paintQr(code: QrCode, branch: Branch, pen: Pen, { x, y, side }: Square): void {
  const { pixs, pixx, pixy } = matrixOf(code.text);
  const module = side / pixx;
  branch.leaf('Figure', { alt: code.says, bbox: [x, y, x + side, y + side] }, () => {
    const { doc } = pen;
    for (let row = 0; row < pixy; row++) {
      for (let from = 0; from < pixx; from++) {
        if (!pixs[row * pixx + from]) continue;
        let to = from;
        while (to < pixx && pixs[row * pixx + to]) to++;
        doc.rect(x + from * module, y + row * module, (to - from) * module, module);
        from = to;
      }
    }
    doc.fillColor(INK).fill();
  });
}

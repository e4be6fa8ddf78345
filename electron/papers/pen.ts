import type { Text } from '../../core/papers/content.ts';
import { breakLines, type TextLine } from './breakLines.ts';
import { INK, type Style, THIN } from './measures.ts';
import type {} from './pdfkitInside.ts';

const FEATURES = ['tnum', 'lnum', 'kern', 'liga'] as const;

/** Puts words and lines on the page. Where on it is the caller's to know. */
export type Pen = ReturnType<typeof takePen>;

export function takePen(doc: PDFKit.PDFDocument) {
  const widths = new Map<string, number>();
  const use = (style: Style) => doc.font(style.cut).fontSize(style.size);

  const widthOf = (text: string, style: Style): number => {
    const key = `${style.cut} ${style.size} ${style.spaced ?? 0} ${text}`;
    let width = widths.get(key);
    if (width === undefined) {
      use(style);
      width = doc.widthOfString(text, textOptions(style)) + (style.spaced ? style.spaced : 0);
      widths.set(key, width);
    }
    return width;
  };

  doc.font('regular');
  const glyphs = doc._font.font;
  /** What the face cannot write becomes a question mark; what has no shape at all is left out. */
  const writable = (text: string): string =>
    Array.from(text.normalize('NFC').replaceAll('\t', ' ').replace(SHAPELESS, ''), (letter) =>
      /[\r\n\u2028\u2029]/.test(letter) || glyphs.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0) ? letter : '?',
    ).join('');

  return {
    doc,
    widthOf,
    lines: (text: Text, style: Style, width: number): readonly TextLine[] => {
      const runs = typeof text === 'string' ? [{ text }] : text;
      return breakLines(
        runs.map((run) => ({ ...run, text: writable(run.text) })),
        style,
        width,
        widthOf,
      );
    },
    /** Writes lines downwards from `y`; `field` is the width in which they stand at the right. */
    write: (lines: readonly TextLine[], x: number, y: number, style: Style, field?: number) => {
      for (const [index, line] of lines.entries()) {
        let at = field === undefined ? x : x + field - inkWidth(line, widthOf);
        const base = y + index * style.line + style.line / 2 + style.size * 0.33;
        for (const piece of line.pieces) {
          use(piece.style).fillColor(piece.style.ink);
          doc.text(piece.text, at, base, { ...textOptions(piece.style), lineBreak: false, baseline: 'alphabetic' });
          at += piece.width;
        }
      }
    },
    rule: (x: number, y: number, width: number, weight: number = THIN) => {
      doc
        .moveTo(x, y)
        .lineTo(x + width, y)
        .lineWidth(weight)
        .strokeColor(INK)
        .stroke();
    },
    /** Paints what says nothing of its own: rules, feet, repeated heads. */
    artifact: (paint: () => void, type: 'Layout' | 'Pagination' = 'Layout') => {
      doc.markContent('Artifact', { type });
      paint();
      doc.endMarkedContent();
    },
  };
}

/** Controls, direction marks, zero-width letters, soft hyphens, halves of letters. */
const SHAPELESS = /(?![\n\r])\p{Cc}|\p{Cf}|\p{Cs}|\p{Variation_Selector}/gu;

/** Width of a line without the blank that it may end in. */
function inkWidth(line: TextLine, widthOf: (text: string, style: Style) => number): number {
  const last = line.pieces[line.pieces.length - 1];
  if (!last) return 0;
  return line.width - last.width + widthOf(last.text.trimEnd(), last.style);
}

const textOptions = (style: Style): PDFKit.Mixins.TextOptions => ({
  features: [...FEATURES],
  ...(style.spaced ? { characterSpacing: style.spaced } : {}),
});

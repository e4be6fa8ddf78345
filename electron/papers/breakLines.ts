import type { Text } from '../../core/papers/content.ts';
import type { Style } from './measures.ts';

/** A stretch of one style on one line, with its width. */
export type Piece = { readonly text: string; readonly style: Style; readonly width: number };
export type TextLine = { readonly pieces: readonly Piece[]; readonly width: number };
export type WidthOf = (text: string, style: Style) => number;

/**
 * Breaks a text into lines no wider than `width`: at blanks and at hyphens within words; a word wider than the line is
 * cut where it must be; a tag never. A line break in the text stays one. Lines but the last end in a blank, so that a
 * reader that joins them does not join words.
 */
export function breakLines(text: Text, style: Style, width: number, widthOf: WidthOf): readonly TextLine[] {
  const runs = typeof text === 'string' ? [{ text }] : text;
  let line: Piece[] = [];
  const lines = [line];
  let used = 0;
  const put = (word: string, wordStyle: Style) => {
    const last = line[line.length - 1];
    const wordWidth = widthOf(word, wordStyle);
    if (last && last.style === wordStyle) {
      line[line.length - 1] = { text: last.text + word, style: wordStyle, width: last.width + wordWidth };
    } else line.push({ text: word, style: wordStyle, width: wordWidth });
    used += wordWidth;
  };
  const wrap = () => {
    line = [];
    lines.push(line);
    used = 0;
  };
  for (const run of runs) {
    const runStyle = styleOf(run, style);
    for (const [index, paragraph] of run.text.split(/\r\n|[\n\r\u2028\u2029]/).entries()) {
      if (index > 0) wrap();
      for (const word of runStyle.spaced ? [paragraph] : wordsOf(paragraph)) {
        const solid = word.replace(/ +$/, '');
        if (used > 0 && used + widthOf(solid, runStyle) > width) wrap();
        if (widthOf(solid, runStyle) <= width) put(word, runStyle);
        else
          for (const part of cut(word, width, (letters) => widthOf(letters, runStyle))) {
            if (used > 0) wrap();
            put(part, runStyle);
          }
      }
    }
  }
  return lines.map((pieces) => ({ pieces, width: pieces.reduce((sum, piece) => sum + piece.width, 0) }));
}

const semibolds = new WeakMap<Style, { strong: Style; tag: Style }>();

/** The same style object for the same run, so that neighbouring words join into one piece. */
function styleOf(run: { readonly strong?: true; readonly tag?: true }, style: Style): Style {
  if (!run.strong && !run.tag) return style;
  let made = semibolds.get(style);
  if (!made) {
    const strong: Style = { ...style, cut: 'semibold' };
    made = { strong, tag: { ...strong, spaced: style.size * 0.045 } };
    semibolds.set(style, made);
  }
  return run.tag ? made.tag : made.strong;
}

/**
 * Words with the blanks behind them; a no-break blank is part of its word, and a figure stays with what it counts. A
 * hyphen parts a word only between small letters: `self-made`, never the type of a part or a range.
 */
const wordsOf = (text: string): readonly string[] =>
  text
    .split(/(?<= )(?! )(?!(?<=(?<![\p{L}\p{N}])\d[\d.,]* )[\p{L}°])|(?<=\p{Ll}{3}-)(?=\p{Ll}{3})/u)
    .filter((word) => word !== '');

function* cut(word: string, width: number, widthOf: (letters: string) => number): Generator<string> {
  let part = '';
  for (const letter of word) {
    if (part !== '' && widthOf(part + letter) > width) {
      yield part;
      part = '';
    }
    part += letter;
  }
  if (part !== '') yield part;
}

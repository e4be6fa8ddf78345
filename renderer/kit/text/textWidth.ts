let pen: CanvasRenderingContext2D | null | undefined;

/** Width of a line of screen text in px; an estimate (half an em a letter) where there is no canvas to ask. */
export function textWidth(text: string, px: number, weight: 400 | 600 | 700 = 400): number {
  if (pen === undefined)
    pen = typeof document === 'undefined' ? null : document.createElement('canvas').getContext('2d');
  if (pen === null) return text.length * px * (weight === 400 ? 0.5 : 0.53);
  pen.font = `${weight} ${px}px "Source Sans 3", sans-serif`;
  return pen.measureText(text).width;
}

/** Lines a text takes in a column of so many px, broken between words as the browser does. */
export function lineCount(text: string, px: number, weight: 400 | 600 | 700, column: number): number {
  let lines = 1;
  let along = 0;
  const space = textWidth(' ', px, weight);
  for (const word of text.split(/\s+/)) {
    const width = textWidth(word, px, weight);
    if (along > 0 && along + space + width > column) {
      lines += 1;
      along = width;
    } else along += (along > 0 ? space : 0) + width;
  }
  return lines;
}

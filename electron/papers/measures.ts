/** Points per millimetre and the sizes of the papers, in points unless a name says otherwise. */
export const MM = 72 / 25.4;

export const PAGE = { A4: [595.28, 841.89], Letter: [612, 792] } as const;

export const MARGIN = { side: 19 * MM, top: 16 * MM, foot: 12 * MM } as const;

export const INK = '#15130F';
export const SECOND_INK = '#3C372F';

export const LABEL_COLUMN = 33 * MM;
export const LABEL_GAP = 4.7 * MM;

/** The line that opens a section, and the thin one between rows. */
export const RULE = 0.7;
export const THIN = 0.25;

export type Style = {
  readonly size: number;
  /** Height of a line. */
  readonly line: number;
  readonly cut: 'regular' | 'semibold';
  readonly ink: string;
  /** Added after each letter. */
  readonly spaced?: number;
};

const style = (size: number, lead: number, cut: Style['cut'] = 'regular', ink: string = INK): Style => ({
  size,
  line: size * lead,
  cut,
  ink,
});

export const STYLES = {
  title: style(26, 1.06, 'semibold'),
  lead: style(15, 1.3),
  text: style(11, 1.36),
  label: style(11, 1.3, 'semibold'),
  head: style(15, 1.2, 'semibold'),
  note: style(10, 1.34, 'regular', SECOND_INK),
  foot: style(9, 1.2, 'regular', SECOND_INK),
  answer: style(12.5, 1.25, 'semibold'),
  figure: style(15, 1.25, 'semibold'),
} as const;

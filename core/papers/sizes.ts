export type PageSize = 'A4' | 'Letter';

export type LabelSize = { readonly widthMm: number; readonly heightMm: number };

/** What tags are printed on: a roll as wide as the printer takes, or sheets to be cut. */
export type TagStock = { readonly on: 'roll'; readonly widthMm: number } | { readonly on: PageSize };

/**
 * A line as a terminal may get it: what people typed into the shop, or a file says, steers no terminal. Control characters
 * (C0, DEL, C1) and what turns the direction of writing are printed as spaces; line breaks and tabs stay.
 */
export const steadyLine = (line: string): string =>
  line.replaceAll(/(?!\r?\n|\r$|\t)[\p{Cc}\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu, ' ');

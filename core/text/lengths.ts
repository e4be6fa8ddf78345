// What a text may have in letters, at the doors of the service and in the fields of a screen.

/** One line of text. */
export const MOST_IN_LINE = 300;
/** Free text: about four pages. */
export const MOST_IN_TEXT = 8000;

/** A text with its full stop, unless it ends with one. */
export const asSentence = (text: string): string => (/[.!?…)”"]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`);

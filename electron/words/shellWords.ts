import words from '../../assets/words/en/shell.json' with { type: 'json' };

/** What the app says outside its page: menu, start-up failures, the door of the loopback address. */
export const shellWords = words;

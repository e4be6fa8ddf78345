import type enPapers from '../../assets/words/en/papers.json';

/** Words of all papers in one language. English sets the shape; a test holds the other languages to it. */
export type PaperWords = typeof enPapers;

/** What kinds of papers there are: `intake-receipt`, `return-report`, … */
export type PaperKindId = keyof PaperWords['kinds'];

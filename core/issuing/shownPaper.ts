import { dayOf, fromWall } from '../calendar.ts';
import type { Paper } from '../papers/content.ts';
import { NOT_YET } from '../papers/format.ts';
import type { PaperKindId } from '../text/paperWords.ts';
import { paperContent } from './facts.ts';
import { isLacking } from './lacking.ts';
import type { PaperRequest } from './making.ts';

/**
 * A paper as it is shown before it is issued, and as a signature binds it: the very content that is issued, without what
 * is known only then. Number, sealed head, clock and signature stand open; words, figures, day and name do not.
 * @throws when the view does not hold what the paper says: it is asked for a paper that can be issued.
 */
export function shownPaper(kind: PaperKindId, asked: PaperRequest): Paper {
  const { asking, settings } = asked;
  const made = paperContent(kind, {
    ...asked,
    number: NOT_YET,
    asking: {
      ...asking,
      lastHead: NOT_YET,
      paperSetting: (language, of) => ({ ...asking.paperSetting(language, of), shownAt: asking.at }),
    },
  });
  if (isLacking(made)) throw new Error(`a paper ${kind} that lacks what it says: ${made.lacks}`);
  const day = dayOf(asking.at, settings.zone);
  return { ...made, issuedAt: fromWall(`${day}T00:00`, settings.zone) };
}

import type { ProofStatus } from '../../core/custody/part.ts';
import type { Words } from '../kit/text/words.tsx';
import { faultName } from '../terms/terms.ts';
import { standingWords, type WallPart } from '../terms/wallRows.ts';

const MOST_NAMED = 3;
const EXPOSED_TO = 'exposed-to-';

/** How good a part is and on what ground: how far it was shown and until when that holds, what it was exposed to, why it is unproved. */
export function standingInFull(part: WallPart, words: Words): string {
  const { t, list, dayMonth } = words;
  const { standing } = part;
  switch (standing.is) {
    case 'known-good': {
      const { where, at, by, scopes } = standing.evidence;
      const day = dayMonth(at);
      const proof = t(where.includes(day) ? 'wall.proof-where' : 'wall.proof', {
        scopes: list(scopes.map((scope) => t(`wall.scope.${scope}`))),
        where,
        day,
        by: part.proof?.by ?? by,
      });
      return standing.lapses === null
        ? proof
        : `${proof} ${t('wall.proof-holds', { day: dayWithYear(standing.lapses, words) })}`;
    }
    case 'exposed':
      return t('wall.exposed-to', {
        called: part.jobCalled ?? t('wall.exposed-job'),
        to: standing.to.slice(0, MOST_NAMED).map(faultName).join('; '),
      });
    case 'unproved':
      return t('wall.unproved-because', { why: whyUnproved(standing, words) });
    case 'dead':
      return t('wall.dead-because', {
        how: words.named('wall.dead-how', standing.how),
      });
    default:
      return standingWords(part, words);
  }
}

const dayWithYear = (at: number, { locale, zone }: Words): string =>
  new Intl.DateTimeFormat(locale, { timeZone: zone, dateStyle: 'medium' }).format(at);

function whyUnproved({ why }: Extract<ProofStatus, { readonly is: 'unproved' }>, { t, named }: Words): string {
  if (why.startsWith(EXPOSED_TO))
    return t('wall.unproved-why.exposed-to', { fault: faultName(why.slice(EXPOSED_TO.length)) });
  return named('wall.unproved-why', why);
}

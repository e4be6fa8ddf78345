import type { Fit, LookAt, Reason } from '../../core/fit/reason.ts';
import type { Words } from '../kit/text/words.tsx';
import { kindName } from './terms.ts';

type Value = Reason['part'];

/** One ground as a sentence: the fact, what either side has, where that comes from, and what to look at while it is not known. */
export function groundWords(reason: Reason, words: Words): string {
  const { t } = words;
  const fact = `fits.facts.${reason.fact}` as const;
  const figures = reason.figures ?? {};
  const because = t('fits.because', {
    name: t(`${fact}.name`, {
      ...Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, valueWords(value, words)])),
      runs: valueWords(figures['runs-at'] ?? null, words),
    }),
    part: t(`${fact}.part`),
    partIs: sideWords(reason, 'part', words),
    place: t(`${fact}.place`),
    placeIs: sideWords(reason, 'place', words),
    source: words.named('fits.source', reason.source),
  });
  const first = because.charAt(0).toUpperCase() + because.slice(1);
  if (reason.says !== 'unknown' || reason.look.length === 0) return first;
  return `${first} ${t('fits.look', { what: words.list(reason.look.map((look) => lookWords(look, words))) })}`;
}

/** The grounds that decide: those against it, else those not known; none where it fits. */
export const decides = (fit: Fit): readonly Reason[] =>
  fit.fits === 'yes' ? [] : fit.reasons.filter((reason) => reason.says === fit.fits);

/** Which fact to look at, and on what. */
export function lookWords({ at, attribute }: LookAt, { t, named }: Words): string {
  return t('fits.look-at', {
    attribute: named('fits.attributes', attribute),
    of: at === 'part' || at === 'slot' ? t(`fits.of-${at}`) : kindName(at),
  });
}

function sideWords(reason: Reason, side: 'part' | 'place', words: Words): string {
  const value = reason[side];
  if (value === null) return words.t('fits.not-known');
  return words.t(`fits.facts.${reason.fact}.value`, { v: valueWords(value, words) });
}

function valueWords(value: Value, words: Words): string {
  if (value === null) return words.t('fits.not-known');
  if (typeof value === 'boolean') return words.t(value ? 'fits.yes' : 'fits.no');
  if (typeof value === 'number') return words.number(value);
  const listed = typeof value === 'string' ? [value] : value;
  return listed.length === 0 ? words.t('fits.nothing') : words.list(listed.map(kindName));
}

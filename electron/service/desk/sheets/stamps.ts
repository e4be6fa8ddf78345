import type { Paper } from '../../../../core/papers/content.ts';
import { fillerOf } from '../../../../core/text/fillGaps.ts';
import { paperWordsOf } from '../../openTools.ts';

/** What is printed over an issued paper, in the paper's language, and is none of its content. */
export type Stamps = readonly string[];

/** What may stand over a paper of this content: that it was replaced or put right, and that it is a copy. */
export function stampsOn({ content, supersededBy }: Stamped, { copy }: { readonly copy: boolean }): Stamps {
  if (content.shape === 'labels') return [];
  const { common } = paperWordsOf(content.language);
  const say = fillerOf({ locale: content.language });
  const signed = content.signing?.line.block === 'signature';
  return [
    ...(copy ? [common.copy] : []),
    ...(supersededBy === null ? [] : [say(signed ? common.putRightBy : common.replacedBy, { number: supersededBy })]),
  ];
}

type Stamped = { readonly content: Paper; readonly supersededBy: string | null };

/** Every way in which a paper of this content may have left the shop: as issued first. */
export const waysStamped = (issued: Stamped): readonly Stamps[] => {
  const alone = { ...issued, supersededBy: null };
  const ways = [alone, issued].flatMap((one) => [false, true].map((copy) => stampsOn(one, { copy })));
  return ways.filter((way, at) => ways.findIndex((other) => other.join() === way.join()) === at);
};

import type { Agrees, OfferedPart } from '../../approval/question.ts';
import type { AgreedLine } from '../agreedLine.ts';

type Offered = Pick<OfferedPart, 'forPart' | 'part' | 'priceMinor' | 'warrantyMonths' | 'taxPermille' | 'coreMinor'> & {
  readonly name?: string;
};

/** What the owner buys by agreeing to an option: the part on offer where it accepts, and the things that go with it. */
export function linesAgreedBy(
  agrees: Agrees,
  offer: Offered | null,
  warrantyMonths: number,
): readonly Omit<AgreedLine, 'question' | 'fitted'>[] {
  const items = agrees.items.map(({ what, priceMinor, taxPermille }) => ({
    what,
    part: null,
    priceMinor,
    warrantyMonths,
    ...(taxPermille !== undefined && { taxPermille }),
  }));
  if (!agrees.accepts || !offer) return items;
  const { part, forPart, priceMinor, taxPermille, coreMinor, name } = offer;
  return [
    {
      what: name ?? part,
      part,
      priceMinor,
      warrantyMonths: offer.warrantyMonths,
      ...(taxPermille !== undefined && { taxPermille }),
      ...(coreMinor !== undefined && coreMinor > 0 && { core: { part: forPart, minor: coreMinor } }),
    },
    ...items,
  ];
}

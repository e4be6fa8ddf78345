/** One of ours on offer for one of theirs that is not made any more, with all that must be disclosed. */
export const anOffer = (
  forPart: string | undefined,
  part: string | undefined,
  says: Readonly<Record<string, unknown>> & { readonly priceMinor: number },
) => ({
  forPart,
  part,
  uses: {},
  afterwards: [],
  extras: [],
  condition: 'used',
  warrantyMonths: 12,
  whyNotSame: 'It is not made any more.',
  ...says,
});

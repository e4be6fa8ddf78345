/** The way in which a part failed is said only where it is believed: this likely, given the part. Common practice, no source. */
export const BELIEVED_FROM = 0.8;

/** Is it believed enough to be said how the part failed, or only that it did? */
export const wayBelieved = ({ p, pFault }: { readonly p: number; readonly pFault: number }): boolean =>
  pFault >= BELIEVED_FROM * p;

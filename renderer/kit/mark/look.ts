/** How a place in a drawing is to be read: what is there, whose it is, how it stands. */
export type MarkLook =
  | {
      readonly is: 'part';
      readonly whose: 'owner' | 'shop';
      readonly standing: 'plain' | 'suspect' | 'named' | 'dead';
      /** Not seen yet: drawn with its outline left open. */
      readonly known: boolean;
    }
  | { readonly is: 'empty' }
  /** Out of its place and to come back: its shadow stays. */
  | { readonly is: 'shadow' }
  /** Whether anything is there is not known. */
  | { readonly is: 'unknown' };

export const PLAIN_OURS: MarkLook = { is: 'part', whose: 'shop', standing: 'plain', known: true };

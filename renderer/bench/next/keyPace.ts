/** A pause between two keys of one burst, ms: hand scanners send a key every 1 to 30 ms. Common practice, no source. */
const GAP = 50;
/** So many keys come together where a person presses fast; more are some other label's, scanned by mistake. */
const BY_HAND = 3;

/** Tells a person at the keys from a label that is no tag of ours, scanned over the card: key by key, times in ms. */
export function keyPace() {
  let [last, count] = [Number.NEGATIVE_INFINITY, 0];
  return {
    /** One more key: is it the first of its burst, and are these more than a person presses at once? */
    key: (at: number): { readonly first: boolean; readonly byNoHand: boolean } => {
      count = at - last < GAP ? count + 1 : 1;
      last = at;
      return { first: count === 1, byNoHand: count > BY_HAND };
    },
    /** Does a key at this moment end such a burst? */
    endsBurst: (at: number): boolean => at - last < GAP && count > BY_HAND,
  };
}

/** One attribute of the part on offer beside the part that failed. */
export type ComparisonRow = {
  readonly attribute: string;
  readonly had: string | null;
  readonly offered: string | null;
  readonly verdict: 'worse' | 'equal' | 'better' | 'cannot-be-compared';
  /** A plain remark for the owner: "she uses none". */
  readonly note: string | null;
};

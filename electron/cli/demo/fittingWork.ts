/** One piece of the fitting: a task, a part of ours that was sold, or an owner's part back in. */
export type FittingWork = {
  readonly at: string;
  readonly handsOn: number;
  readonly task?: string;
  readonly says?: string;
  readonly fit?: string;
  readonly own?: string;
  readonly slot?: string;
  readonly why?: string;
};

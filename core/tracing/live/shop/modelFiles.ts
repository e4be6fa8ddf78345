/** A fault model's files by name: what a shop keeps a copy of and changes. */
export type ModelFiles = { readonly [file: string]: unknown };

/**
 * One field that differs: `path` as in `steps.meas-rails.handsOn`, entries of a list by their id or place. `before` or
 * `after` is absent where the field is. As kept in the journal, it is also the change itself.
 */
export type ModelDifference = {
  readonly file: string;
  readonly path: string;
  readonly before?: unknown;
  readonly after?: unknown;
};

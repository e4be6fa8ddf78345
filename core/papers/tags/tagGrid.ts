import type { PageSize } from '../sizes.ts';

/** Cells of a page of tags, in millimetres from its top left. */
export type TagGrid = {
  readonly page: PageSize;
  readonly across: number;
  readonly down: number;
  readonly left: number;
  readonly top: number;
};

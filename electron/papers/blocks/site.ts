import type { Pen } from '../pen.ts';
import type { Branch } from '../structure.ts';

/** Where a block stands: its left edge and width, and the branch of the structure tree that it hangs in. */
export type Site = { readonly pen: Pen; readonly branch: Branch; readonly x: number; readonly width: number };

import { exactRow } from './exactRow.ts';
import { exactSpeedRow } from './exactSpeedRow.ts';
import { estimateRow } from './live/estimateRow.ts';
import { liveRow } from './live/liveRow.ts';
import { liveSpeedRow } from './live/liveSpeedRow.ts';
import { coverageRow } from './ranks/coverageRow.ts';
import { rankRow } from './ranks/rankRow.ts';
import { ratioRow } from './ratioRow.ts';
import { rolloutRow } from './rolloutRow.ts';
import type { Row } from './row.ts';
import { thousandRow } from './thousandRow.ts';

/** Every row of the tracing benchmark, in the order printed: a new one is a file beside this and a line here. */
export const ROWS: readonly Row[] = [
  exactRow,
  ratioRow,
  rolloutRow,
  exactSpeedRow,
  thousandRow,
  liveSpeedRow,
  estimateRow,
  rankRow,
  coverageRow,
  liveRow,
];

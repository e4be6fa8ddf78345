import { GROUPS } from '../groups.ts';
import { maskOf } from '../model/circuits.ts';
import { NOTHING_WRONG } from '../model/special.ts';
import type { FaultModel } from '../types.ts';

/** Rows that differ by less than this (total variation) are the same to a bench. Our own choice, no source. */
const TELLS_APART = 0.1;

/** Does some step tell two faults apart: by what it shows, what it takes out, or what it mends? Rows are made once. */
export function separability(model: FaultModel): (i: number, j: number) => boolean {
  const rows = model.steps.map((_, s) => model.faults.map((__, f) => steadyRow(model, s, f)));
  return (i, j) => rows.some((row) => difference(row[i] ?? [], row[j] ?? []) > TELLS_APART);
}

function difference(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, p, o) => sum + Math.abs(p - (b[o] ?? 0)), 0) / 2;
}

/** What a step shows of one steady fault in an untouched machine, mending counted. */
function steadyRow(model: FaultModel, s: number, f: number): number[] {
  const step = model.steps[s];
  const fault = model.faults[f];
  const nothing = model.nothing[s];
  if (!step || !fault || !nothing) throw new Error(`no step ${s} or fault ${f}`);
  const out = step.onRig ? ~maskOf(step.onRig) : maskOf(step.takesOut);
  const home = (model.faultMask[f] ?? 0) & maskOf(['home']) & ~maskOf(step.bringsIn);
  const listed = model.listed[s]?.[f] === 1 && !step.onRig;
  const shows = (listed || ((model.faultMask[f] ?? 0) & out) === 0) && home === 0 && fault.id !== NOTHING_WRONG;
  const row = model.rows[s]?.[f] ?? groupRow(model, s, f);
  const left = shows ? 1 - (step.mends[fault.id] ?? 0) : 0;
  return Array.from(row, (p, o) => left * p + (1 - left) * (nothing[o] ?? 0));
}

function groupRow(model: FaultModel, s: number, f: number): Float64Array {
  const rows = model.byGroup[s];
  const weights = model.faults[f]?.weights ?? {};
  const nothing = model.nothing[s] ?? new Float64Array(0);
  if (!rows) return nothing;
  const total = GROUPS.reduce((sum, group) => sum + (weights[group] ?? 0), 0);
  if (total === 0) return nothing;
  const row = new Float64Array(nothing.length);
  for (const group of GROUPS)
    for (let o = 0; o < row.length; o++)
      row[o] = (row[o] ?? 0) + ((weights[group] ?? 0) / total) * (rows[group][o] ?? 0);
  return row;
}

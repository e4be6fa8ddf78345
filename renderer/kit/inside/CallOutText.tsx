import type { PlanPoint } from './plan.ts';
import type { CallOutLine } from './words.ts';

/** Lines of a call-out: what, whose and where, what is known. */
export function CallOutText({ lines }: { readonly lines: readonly CallOutLine[] }) {
  return (
    <>
      {lines.map((line) => (
        <span key={line.tone + line.text} className={`k-call-${line.tone}`}>
          {line.text}
        </span>
      ))}
    </>
  );
}

/** A lead with one bend, from the column to the part. */
export function Lead({
  from,
  leaves,
  anchor,
}: {
  readonly from: number;
  readonly leaves: PlanPoint;
  readonly anchor: PlanPoint;
}) {
  return (
    <g>
      <path d={`M${from} ${leaves.y}H${leaves.x}L${anchor.x} ${anchor.y}`} className="k-inside-call-lead" />
      <circle cx={anchor.x} cy={anchor.y} r={3} className="k-inside-call-end" />
    </g>
  );
}

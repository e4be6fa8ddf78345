import { MarkShape } from './Rule.tsx';
import './plots.css';

/** What point, diamond and whisker stand for. */
export function PlotLegend({
  point,
  diamond,
  whisker,
}: {
  readonly point: string;
  readonly diamond: string;
  readonly whisker: string;
}) {
  return (
    <ul className="k-plot-legend">
      <li>
        <svg width={16} height={20} aria-hidden="true">
          <MarkShape kind="point" x={8} y={10} />
        </svg>
        {point}
      </li>
      <li>
        <svg width={18} height={20} aria-hidden="true">
          <MarkShape kind="diamond" x={9} y={10} />
        </svg>
        {diamond}
      </li>
      <li>
        <svg width={38} height={20} aria-hidden="true">
          <path d="M2 10H36M2 2v16M36 2v16" className="k-rule-bracket" />
        </svg>
        {whisker}
      </li>
    </ul>
  );
}

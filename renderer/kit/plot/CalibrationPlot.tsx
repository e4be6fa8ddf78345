import { useWords } from '../text/words.tsx';
import { useSize } from '../useSize.ts';
import { MarkShape } from './Rule.tsx';
import { RuleLine } from './RuleLine.tsx';
import { linearScale } from './scale.ts';
import './plots.css';

export type CalibrationPoint = {
  /** In 100: what was said would be done by then, what was, and the range so few jobs allow. */
  readonly said: number;
  readonly done: number;
  readonly low: number;
  readonly high: number;
  /** "17 of 41". */
  readonly counts: string;
};
export type CalibrationPlotProps = {
  readonly caption: string;
  /** Along: "jobs in 100 that we said would be done by then"; up: "jobs in 100 that were done". */
  readonly along: string;
  readonly up: string;
  /** "on the dots: as promised". */
  readonly onDots: string;
  readonly points: readonly CalibrationPoint[];
};

const LEFT = 78;
const TOP = 14;
const FOOT = 74;
const TICKS = Array.from({ length: 21 }, (_, i) => ({
  at: i * 5,
  size: i % 10 === 0 ? ('long' as const) : ('short' as const),
  ...(i % 10 === 0 ? { label: String(i * 5) } : {}),
}));

/** Said against done, both on rulers to 100, ranges as whiskers; on the dots is as promised. With the same in a table. */
export function CalibrationPlot({ caption, along, up, onDots, points }: CalibrationPlotProps) {
  const { number, t } = useWords();
  const { ref, size } = useSize<HTMLElement>({ width: 460, height: 460 });
  const side = Math.max(200, Math.min(size.width - LEFT - 24, 560));
  const scale = linearScale(0, 100, side);
  const x = (share: number) => LEFT + scale.at(share);
  const y = (share: number) => TOP + side - scale.at(share);
  return (
    <figure ref={ref} className="k-calibration">
      <svg width={LEFT + side + 24} height={TOP + side + FOOT} aria-hidden="true">
        <path d={`M${x(0)} ${y(0)}L${x(100)} ${y(100)}`} className="k-calibration-dots" />
        <text x={x(4)} y={y(96)} className="k-rule-label">
          {onDots}
        </text>
        <RuleLine from={x(0)} to={x(100)} at={y(0)} ticks={TICKS.map((tick) => ({ ...tick, at: x(tick.at) }))} />
        <RuleLine
          along="y"
          from={y(100)}
          to={y(0)}
          at={x(0)}
          side={-1}
          ticks={TICKS.map((tick) => ({ ...tick, at: y(tick.at) }))}
        />
        <text x={x(50)} y={y(0) + 60} textAnchor="middle" className="k-calibration-axis">
          {along}
        </text>
        <text transform={`translate(18 ${y(50)}) rotate(-90)`} textAnchor="middle" className="k-calibration-axis">
          {up}
        </text>
        {points.map((point) => (
          <g key={point.said}>
            <path
              d={`M${x(point.said)} ${y(point.low)}V${y(point.high)}M${x(point.said) - 7} ${y(point.low)}h14M${x(point.said) - 7} ${y(point.high)}h14`}
              className="k-rule-bracket"
            />
            <MarkShape kind="point" x={x(point.said)} y={y(point.done)} />
          </g>
        ))}
      </svg>
      <table className="k-heard">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{along}</th>
            <th scope="col">{up}</th>
          </tr>
        </thead>
        <tbody>
          {points.map((point) => (
            <tr key={point.said}>
              <th scope="row">{number(point.said)}</th>
              <td>
                {t('kit.plot.range', {
                  here: Math.round(point.done),
                  low: Math.round(point.low),
                  high: Math.round(point.high),
                })}
                , {point.counts}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}

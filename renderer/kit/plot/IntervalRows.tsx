import type { ReactNode } from 'react';
import { useWords } from '../text/words.tsx';
import { useSize } from '../useSize.ts';
import { MarkShape } from './Rule.tsx';
import { RuleLine } from './RuleLine.tsx';
import { linearScale } from './scale.ts';
import { evenTicks } from './ticks.ts';
import './plots.css';

export type IntervalRow = {
  readonly id: string;
  readonly name: string;
  readonly second: string;
  /** Shares in 100: seen here, its range, and all others of the kind. */
  readonly here: number;
  readonly low: number;
  readonly high: number;
  readonly others: number | null;
  /** "9 of 15". */
  readonly counts: string;
  /** The verdict in words; bold only when it says more than "too few to say". */
  readonly verdict: string;
  readonly bold: boolean;
};
export type IntervalRowsProps = {
  readonly caption: string;
  /** Heads for a screen reader: name, range, others, counts, verdict. */
  readonly heads: readonly [string, string, string, string, string];
  /** "in 100 seen here". */
  readonly unit: string;
  readonly rows: readonly IntervalRow[];
  readonly onChoose?: (id: string) => void;
  readonly legend?: ReactNode;
};

const PAD = 14;

/** Families of failures, one a line, on one fixed scale to 100: point and range here, diamond for the others, verdict in words. A real table. */
export function IntervalRows({ caption, heads, unit, rows, onChoose, legend }: IntervalRowsProps) {
  const { number, t } = useWords();
  const { ref, size } = useSize<HTMLTableCellElement>({ width: 308, height: 40 });
  const scale = linearScale(0, 100, Math.max(120, size.width - PAD * 2));
  const x = (share: number) => PAD + scale.at(share);
  const width = scale.length + PAD * 2;
  return (
    <div>
      <table className="k-intervals">
        <caption className="k-heard">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="k-heard">{heads[0]}</span>
            </th>
            <th scope="col" ref={ref}>
              <span className="k-heard">{heads[1]}</span>
              <svg width={width} height={42} aria-hidden="true">
                <RuleLine
                  from={x(0)}
                  to={x(100)}
                  at={38}
                  side={-1}
                  ticks={evenTicks(0, 100, scale.length, (value) => number(value), 60).map((tick) => ({
                    ...tick,
                    at: x(tick.at),
                  }))}
                  labels="none"
                />
                {[0, 50, 100].map((share) => (
                  <text key={share} x={x(share)} y={16} textAnchor="middle" className="k-rule-label">
                    {number(share)}
                  </text>
                ))}
              </svg>
            </th>
            <th scope="col" className="k-intervals-unit">
              {unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                {onChoose ? (
                  <button type="button" className="k-intervals-name" onClick={() => onChoose(row.id)}>
                    {row.name}
                  </button>
                ) : (
                  <b>{row.name}</b>
                )}
                <span className="k-muted">{row.second}</span>
              </th>
              <td>
                <span className="k-heard">
                  {t('kit.plot.range', {
                    here: Math.round(row.here),
                    low: Math.round(row.low),
                    high: Math.round(row.high),
                  })}
                  {row.others === null ? '' : `; ${heads[2]} ${number(Math.round(row.others))}`}
                </span>
                <svg width={width} height={46} aria-hidden="true">
                  <path d={`M${x(0)} 30H${x(100)}`} className="k-intervals-way" />
                  <path
                    d={`M${x(row.low)} 30H${x(row.high)}M${x(row.low)} 22v16M${x(row.high)} 22v16`}
                    className="k-rule-bracket"
                  />
                  <MarkShape kind="point" x={x(row.here)} y={30} />
                  {row.others !== null && <MarkShape kind="diamond" x={x(row.others)} y={13} />}
                </svg>
              </td>
              <td>
                <b>{row.counts}</b>
                <span className={row.bold ? 'k-intervals-bold' : 'k-muted'}>{row.verdict}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {legend}
    </div>
  );
}

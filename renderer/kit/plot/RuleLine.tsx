import './Rule.css';

export type LineTick = {
  /** px along the line. */
  readonly at: number;
  readonly size: 'long' | 'middle' | 'short';
  readonly label?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
};
export type RuleLineProps = {
  readonly along?: 'x' | 'y';
  /** px along, start and end of the drawn line. */
  readonly from: number;
  readonly to: number;
  /** px across. */
  readonly at: number;
  readonly ticks: readonly LineTick[];
  /** Which way ticks point: 1 below or right, -1 above or left. */
  readonly side?: 1 | -1;
  /** Labels on the ticks' side, or on the other. */
  readonly labels?: 'same' | 'other' | 'none';
  /** px along: where closed hours are folded away. */
  readonly joints?: readonly number[];
  /** Parts of the line without scale, dotted. */
  readonly dotted?: readonly (readonly [number, number])[];
  /** px along, gaps in the line (a joint sits there). */
  readonly gaps?: readonly (readonly [number, number])[];
};

const LENGTHS = { long: 13, middle: 9, short: 5 } as const;

/** The one ruler: a 2 px ink line with ticks in three lengths, labels, and joints where it is folded. Part of a drawing. */
export function RuleLine({
  along = 'x',
  from,
  to,
  at,
  ticks,
  side = 1,
  labels = 'same',
  joints = [],
  dotted = [],
  gaps = [],
}: RuleLineProps) {
  const across = along === 'y';
  const line = (a: number, b: number) => (across ? `M${at} ${a}V${b}` : `M${a} ${at}H${b}`);
  const pieces: string[] = [];
  let pen = from;
  for (const [a, b] of gaps) {
    pieces.push(line(pen, a));
    pen = b;
  }
  pieces.push(line(pen, to));
  const tickPath = ticks
    .map((tick) => {
      const reach = side * LENGTHS[tick.size];
      return across ? `M${at} ${tick.at.toFixed(1)}h${reach}` : `M${tick.at.toFixed(1)} ${at}v${reach}`;
    })
    .join('');
  const labelSide = labels === 'same' ? side : -side;
  return (
    <g>
      <path d={pieces.join('')} className="k-rule-line" />
      {dotted.map(([a, b]) => (
        <path key={a} d={line(a, b)} className="k-rule-dots" />
      ))}
      <path d={tickPath} className="k-rule-ticks" />
      {joints.map((joint) => (
        <g key={joint} transform={across ? `translate(${at} ${joint})` : `translate(${joint} ${at})`}>
          <circle r={5} className="k-rule-joint" />
          <circle r={1.4} className="k-rule-joint-point" />
        </g>
      ))}
      {ticks.map((tick) =>
        tick.label === undefined || labels === 'none' ? null : across ? (
          <text
            key={tick.at}
            x={at + labelSide * 20}
            y={tick.at + 5.5}
            textAnchor={labelSide > 0 ? 'start' : 'end'}
            className="k-rule-label"
          >
            {tick.label}
          </text>
        ) : (
          <text
            key={tick.at}
            x={tick.at}
            y={labelSide > 0 ? at + 31 : at - 10}
            textAnchor={tick.anchor ?? 'middle'}
            className="k-rule-label"
          >
            {tick.label}
          </text>
        ),
      )}
    </g>
  );
}

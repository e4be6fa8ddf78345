import type { Ruler } from '../../../core/papers/content.ts';
import { RuleLine } from '../plot/RuleLine.tsx';
import { linearScale } from '../plot/scale.ts';
import { useSize } from '../useSize.ts';
import { PaperText } from './PaperText.tsx';

const PAD = 26;

/** A reading, price or time on its ruler, as the printed paper draws it. */
export function PaperRuler({ ruler }: { readonly ruler: Ruler }) {
  const { ref, size } = useSize<HTMLDivElement>({ width: 420, height: 80 });
  const scale = linearScale(ruler.from, ruler.to, Math.max(80, size.width - PAD * 2));
  const x = (value: number) => PAD + scale.at(Math.min(ruler.to, Math.max(ruler.from, value)));
  // Where spans and points are both named, the points' names get a line of their own.
  const above = ruler.spans.length > 0 && ruler.points.length > 0 ? 10 : 0;
  return (
    <div ref={ref}>
      <svg
        width={size.width}
        height={82 + above}
        viewBox={`0 ${-above} ${size.width} ${82 + above}`}
        role="img"
        aria-label={ruler.says}
      >
        {ruler.spans.map((span) => (
          <g key={span.label}>
            {span.kind === 'likely' ? (
              <path d={`M${x(span.from)} 34H${x(span.to)}`} className="k-rule-thick" />
            ) : (
              <path
                d={`M${x(span.from)} ${span.open === 'below' ? 31 : 40}V31H${x(span.to)}${span.open === 'above' ? '' : 'v9'}`}
                className="k-rule-bracket"
              />
            )}
            <text x={(x(span.from) + x(span.to)) / 2} y={22} textAnchor="middle" className="k-rule-label">
              {span.label}
            </text>
          </g>
        ))}
        <RuleLine
          from={PAD}
          to={PAD + scale.length}
          at={44}
          ticks={ruler.ticks.map((tick) => ({
            at: x(tick.at),
            size: tick.half ? 'middle' : 'long',
            ...(tick.label === undefined ? {} : { label: tick.label }),
          }))}
        />
        {ruler.points.map((point) => (
          <g key={point.label}>
            {point.kind === 'reading' ? (
              <circle cx={x(point.at)} cy={34} r={6} className="k-rule-point" />
            ) : (
              <path d={`M${x(point.at)} 16V54`} className="k-rule-bar" />
            )}
            <text
              x={x(point.at)}
              y={ruler.spans.length > 0 ? 8 - above : 20}
              dominantBaseline="middle"
              textAnchor={x(point.at) > size.width - 90 ? 'end' : 'middle'}
              className="k-rule-mark-label"
            >
              {point.label}
            </text>
          </g>
        ))}
      </svg>
      {ruler.source !== undefined && (
        <p className="k-paper-note">
          <PaperText text={ruler.source} />
        </p>
      )}
    </div>
  );
}

import { useWords } from '../text/words.tsx';
import { RuleLine } from './RuleLine.tsx';
import { linearScale, type Scale } from './scale.ts';
import type { Tick } from './ticks.ts';
import { evenTicks } from './ticks.ts';
import './Rule.css';

export type RuleMark = {
  readonly at: number;
  readonly kind: 'point' | 'hollow' | 'diamond';
  /** Said in the text alternative, and drawn above when `shown`. */
  readonly says: string;
  readonly shown?: boolean;
};
export type RuleRange = {
  readonly from: number;
  readonly to: number;
  /** `thick` likely; `dots` goes on to a bar; `bracket` what is allowed; `whisker` an interval. */
  readonly kind: 'thick' | 'dots' | 'bracket' | 'whisker';
  readonly says: string;
  readonly shown?: boolean;
};
export type RuleProps = {
  /** What is measured, with its unit. */
  readonly label: string;
  readonly from: number;
  readonly to: number;
  /** px. */
  readonly length: number;
  /** How a figure is written under a long tick; the locale's number when left out. */
  readonly figure?: (value: number) => string;
  /** Another scale than equal steps: folded time. Its joints are drawn, its ticks must be given. */
  readonly scale?: Scale & { readonly joints?: readonly number[] };
  /** Own ticks instead of even ones. */
  readonly ticks?: readonly Tick[];
  readonly marks?: readonly RuleMark[];
  readonly ranges?: readonly RuleRange[];
  /** A blue line across: what must not be passed. */
  readonly limit?: { readonly at: number; readonly label: string; readonly says: string };
};

const PAD = 24;
const UP = 48;

/** A scale with what stands on it, and the same in words for those who do not see it. */
export function Rule({
  label,
  from,
  to,
  length,
  figure,
  ticks,
  marks = [],
  ranges = [],
  limit,
  scale: own,
}: RuleProps) {
  const { t, number } = useWords();
  const scale = own ?? linearScale(from, to, length);
  const x = (value: number) => PAD + scale.at(Math.min(to, Math.max(from, value)));
  const write = figure ?? ((value: number) => number(value));
  const drawn = ticks ?? evenTicks(from, to, length, write);
  const says = [
    t('kit.rule.from-to', { label, from: write(from), to: write(to) }),
    ...ranges.map((range) => range.says),
    ...marks.map((mark) => mark.says),
    ...(limit ? [limit.says] : []),
  ].join('. ');
  const mid = UP - 14;
  return (
    <svg role="img" aria-label={says} width={length + PAD * 2} height={UP + 38} className="k-rule">
      {ranges.map((range) => (
        <g key={`${range.kind}${range.from}`}>
          {range.kind === 'thick' && <path d={`M${x(range.from)} ${mid}H${x(range.to)}`} className="k-rule-thick" />}
          {range.kind === 'dots' && (
            <>
              <path d={`M${x(range.from)} ${mid}H${x(range.to)}`} className="k-rule-dots" />
              <path d={`M${x(range.to)} ${mid - 8}v16`} className="k-rule-bar" />
            </>
          )}
          {range.kind === 'bracket' && (
            <path d={`M${x(range.from)} ${UP - 4}v-8H${x(range.to)}v8`} className="k-rule-bracket" />
          )}
          {range.kind === 'whisker' && (
            <path
              d={`M${x(range.from)} ${mid}H${x(range.to)}M${x(range.from)} ${mid - 8}v16M${x(range.to)} ${mid - 8}v16`}
              className="k-rule-bracket"
            />
          )}
          {range.shown === true && (
            <text
              x={(x(range.from) + x(range.to)) / 2}
              y={range.kind === 'bracket' ? UP - 27 : mid - 12}
              textAnchor="middle"
              className="k-rule-label"
            >
              {range.says}
            </text>
          )}
        </g>
      ))}
      <RuleLine
        from={PAD}
        to={PAD + length}
        at={UP}
        ticks={drawn.map((tick) => ({ ...tick, at: x(tick.at) }))}
        joints={(own?.joints ?? []).map((joint) => PAD + joint)}
      />
      {marks.map((mark) => (
        <g key={mark.says}>
          <MarkShape kind={mark.kind} x={x(mark.at)} y={mid} />
          {mark.shown === true && (
            <text x={x(mark.at)} y={mid - 13} textAnchor="middle" className="k-rule-mark-label">
              {mark.says}
            </text>
          )}
        </g>
      ))}
      {limit !== undefined && (
        <>
          <path d={`M${x(limit.at)} ${UP - 32}V${UP + 12}`} className="k-rule-limit" />
          <text
            x={x(limit.at) + (limit.at > (from + to) / 2 + (to - from) * 0.38 ? -6 : 6)}
            y={13}
            textAnchor={limit.at > (from + to) / 2 + (to - from) * 0.38 ? 'end' : 'start'}
            className="k-rule-limit-label"
          >
            {limit.label}
          </text>
        </>
      )}
    </svg>
  );
}

/** A full point, a hollow one, or a diamond, 6.5 px. */
export function MarkShape({ kind, x, y }: { readonly kind: RuleMark['kind']; readonly x: number; readonly y: number }) {
  if (kind === 'diamond') return <path d={`M${x} ${y - 7}l7 7l-7 7l-7 -7Z`} className="k-rule-diamond" />;
  return <circle cx={x} cy={y} r={6.5} className={kind === 'point' ? 'k-rule-point' : 'k-rule-hollow'} />;
}

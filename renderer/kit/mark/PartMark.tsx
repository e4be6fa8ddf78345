import { useWords } from '../text/words.tsx';
import type { MarkLook } from './look.ts';
import { TORN_DEPTH, tornEdge } from './torn.ts';
import './marks.css';

export type PartMarkProps = {
  readonly look: MarkLook;
  /** Seeds the torn edge: the part's own id. */
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** `fill` of a useHatch whose `defs` stand in the same drawing. */
  readonly hatch: string;
  /** Says SHOP on a plate inside. Leave off where the plate would cover what matters and the words stand beside it. */
  readonly plate?: boolean;
};

/** One part inside a drawing: whose it is and how it stands, by outline, hatch, tear and strokes; never by colour alone. */
export function PartMark({ look, id, x, y, width: w, height: h, hatch, plate = true }: PartMarkProps) {
  if (look.is === 'empty' || look.is === 'shadow')
    return <rect x={x} y={y} width={w} height={h} className="k-mark-gone" />;
  if (look.is === 'unknown' || !look.known) {
    const shop = look.is === 'part' && look.whose === 'shop';
    return (
      <g className={shop ? 'k-mark-ours' : 'k-mark-owners'}>
        <rect x={x} y={y} width={w} height={h} className="k-mark-fill" />
        {shop && <rect x={x} y={y} width={w} height={h} fill={hatch} />}
        <path d={openOutline(x, y, w, h)} className="k-mark-outline k-mark-open" />
      </g>
    );
  }
  const torn = look.standing === 'suspect' || look.standing === 'named';
  const foot = y + h - TORN_DEPTH;
  const outline = torn ? `M${x} ${y}H${x + w}V${foot}${tornEdge(x + w, x, foot, id)}Z` : `M${x} ${y}h${w}v${h}h${-w}Z`;
  const shop = look.whose === 'shop';
  return (
    <g className={shop ? 'k-mark-ours' : 'k-mark-owners'}>
      <path d={outline} className="k-mark-fill" />
      {shop && <path d={outline} fill={hatch} />}
      <path d={outline} className="k-mark-outline" />
      {shop && plate && <Plate x={x + w / 2} y={y + h / 2} upright={h > w} />}
      {look.standing === 'dead' && <path d={deadStrokes(x, y, w, h)} className="k-mark-dead" />}
    </g>
  );
}

/** SHOP on a plate, lying or standing. */
function Plate({ x, y, upright }: { readonly x: number; readonly y: number; readonly upright: boolean }) {
  const { t } = useWords();
  return (
    <g transform={`translate(${x} ${y})${upright ? ' rotate(-90)' : ''}`}>
      <rect x={-34} y={-13} width={68} height={26} className="k-mark-plate" />
      <text y={6} textAnchor="middle" className="k-mark-plate-word">
        {t('kit.mark.shop')}
      </text>
    </g>
  );
}

/** An outline with two gaps: top and right. */
export function openOutline(x: number, y: number, w: number, h: number): string {
  return `M${x + w * 0.6} ${y}H${x + w}V${y + h * 0.36}M${x + w} ${y + h * 0.64}V${y + h}H${x}V${y}H${x + w * 0.4}`;
}

/** Two strokes from lower left to upper right, 8 px past both sides. */
function deadStrokes(x: number, y: number, w: number, h: number): string {
  const rise = Math.min(h * 0.62, (w + 16) * 0.36);
  const low = y + h / 2 + rise / 2;
  const apart = Math.min(18, h * 0.28);
  return [-apart / 2, apart / 2].map((d) => `M${x - 8} ${low + d}L${x + w + 8} ${low - rise + d}`).join('');
}

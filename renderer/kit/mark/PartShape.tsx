import type { MarkLook } from './look.ts';
import { type SilhouetteName, silhouette } from './silhouettes.ts';
import './marks.css';

export type PartShapeProps = {
  readonly name: SilhouetteName;
  readonly x: number;
  readonly y: number;
  readonly hatch: string;
  readonly look: MarkLook;
  readonly scale?: number;
};

/** A part in its own shape inside a drawing, centred on (x, y); when it is out, only its dotted shadow. */
export function PartShape({ name, x, y, hatch, look, scale = 1 }: PartShapeProps) {
  const { outline, inside } = silhouette(name);
  const at = `translate(${x} ${y})${scale === 1 ? '' : ` scale(${scale})`}`;
  if (look.is !== 'part') {
    return (
      <g transform={at}>
        <path d={outline} className="k-mark-gone" />
      </g>
    );
  }
  const shop = look.whose === 'shop';
  return (
    <g transform={at} className={shop ? 'k-mark-ours' : 'k-mark-owners'}>
      <path d={outline} className="k-mark-fill" />
      {shop && <path d={outline} fill={hatch} />}
      <path d={outline} className="k-mark-outline" />
      {inside.map((path) => (
        <path key={path} d={path} className={path.endsWith('Z') ? 'k-mark-inside' : 'k-mark-inside k-mark-line'} />
      ))}
      {look.standing === 'dead' && <path d="M-44 24L44 -12M-44 12L44 -24" className="k-mark-dead" />}
    </g>
  );
}

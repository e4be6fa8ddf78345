import type { MarkLook } from './look.ts';
import { PartMark } from './PartMark.tsx';
import { PartShape } from './PartShape.tsx';
import { type SilhouetteName, silhouette } from './silhouettes.ts';
import { useHatch } from './useHatch.tsx';

/** The mark of a part beside its name in a list or table. The words beside it say the same, so it is not read out. */
export function PartSwatch({
  look,
  id,
  width = 42,
  height = 22,
}: {
  readonly look: MarkLook;
  readonly id: string;
  readonly width?: number;
  readonly height?: number;
}) {
  const hatch = useHatch(5, 1);
  return (
    <svg
      width={width + 20}
      height={height + 8}
      viewBox={`-10 -4 ${width + 20} ${height + 8}`}
      aria-hidden="true"
      className="k-swatch"
    >
      {hatch.defs}
      <PartMark look={look} id={id} x={0} y={0} width={width} height={height} hatch={hatch.fill} plate={false} />
    </svg>
  );
}

/** A part's silhouette by itself, as beside "borrow". */
export function PartPicture({
  name,
  look,
  width = 58,
}: {
  readonly name: SilhouetteName;
  readonly look: MarkLook;
  readonly width?: number;
}) {
  const hatch = useHatch(8, 1.1);
  const { width: w, height: h } = silhouette(name);
  const drawn = Math.min(width, w + 10);
  return (
    <svg
      width={drawn}
      height={((h + 6) / (w + 10)) * drawn}
      viewBox={`${-w / 2 - 5} ${-h / 2 - 3} ${w + 10} ${h + 6}`}
      aria-hidden="true"
    >
      {hatch.defs}
      <PartShape name={name} x={0} y={0} hatch={hatch.fill} look={look} />
    </svg>
  );
}

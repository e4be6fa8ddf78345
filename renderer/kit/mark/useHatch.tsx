import { type ReactNode, useId } from 'react';
import './marks.css';

/** A 45° hatch in the shop's blue, pitch 7 px: `defs` goes into the drawing once, `fill` onto shapes. */
export function useHatch(pitch = 7, weight = 1.5): { readonly defs: ReactNode; readonly fill: string } {
  const id = useId();
  return {
    fill: `url(#${id})`,
    defs: (
      <defs>
        <pattern id={id} width={pitch} height={pitch} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d={`M0 0V${pitch}`} className="k-hatch-line" strokeWidth={weight * 2} />
        </pattern>
      </defs>
    ),
  };
}

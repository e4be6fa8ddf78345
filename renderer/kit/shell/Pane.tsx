import { type CSSProperties, type ReactNode, useRef } from 'react';
import { useFocusInSight } from './focusInSight.ts';
import './Pane.css';

export type PaneProps = {
  /** `sheet` where one writes or decides, `ground` where one looks, `soft` under a paper. */
  readonly on?: 'ground' | 'sheet' | 'soft';
  /** Ink line against the neighbour. */
  readonly line?: 'left' | 'right' | 'top' | 'bottom' | 'none';
  /** Name of the region; without one it is no landmark. */
  readonly label?: string;
  readonly padded?: boolean;
  readonly scrolls?: boolean;
  readonly style?: CSSProperties;
  readonly children: ReactNode;
};

/** One area of a room. Panes meet at ink lines, never as cards. */
export function Pane({
  on = 'ground',
  line = 'none',
  label,
  padded = true,
  scrolls = false,
  style,
  children,
}: PaneProps) {
  const pane = useRef<HTMLElement>(null);
  useFocusInSight(pane, scrolls);
  const className = `k-pane k-pane-${on} k-pane-line-${line}${padded ? ' k-pane-padded' : ''}${scrolls ? ' k-pane-scrolls' : ''}`;
  return label === undefined ? (
    <div className={className} style={style}>
      {children}
    </div>
  ) : (
    <section ref={pane} className={className} style={style} aria-label={label} {...(scrolls ? { tabIndex: 0 } : {})}>
      {children}
    </section>
  );
}

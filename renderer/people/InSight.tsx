import { type ReactNode, useEffect } from 'react';
import { createPortal } from 'react-dom';
import { useWhoIsHere } from '../whoIsHere.tsx';

/** Where a step's far view stands: apart from the room, so that it stays in sight and reach when the screen locks, while `held`. */
export function InSight({ held, children }: { readonly held: boolean; readonly children: ReactNode }) {
  const { holdInSight } = useWhoIsHere();
  useEffect(() => {
    holdInSight(held);
    return () => holdInSight(false);
  }, [held, holdInSight]);
  return createPortal(
    <div className="k-far-place" data-touch="bench">
      {children}
    </div>,
    document.body,
  );
}

import { type ReactNode, useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';
import type { OfTheShop } from '../../core/contract/hereSheet.ts';
import { parseTag } from '../../core/custody/tag.ts';
import type { StaffId } from '../../core/ids.ts';
import { useScan } from '../kit/scan/scan.ts';
import { ofBadge } from './ofBadge.ts';
import './people.css';

/** Stays to be read and pressed while the screen is locked: the far view of a step under way. */
const STAYS = '.k-far-place';

/** Takes everything else on the page out of sight and reach; gives it back when it goes. */
function useOutOfReach(active: boolean, own: string): void {
  useEffect(() => {
    if (!active) return;
    const others = [...document.body.children].filter((one) => !one.matches(own));
    const cover = (covered: boolean) => {
      for (const one of others) for (const mark of ['inert', 'data-covered']) one.toggleAttribute(mark, covered);
    };
    cover(true);
    return () => cover(false);
  }, [active, own]);
}

/** Lies over everything, so that nothing behind it is seen, heard or reached. */
export function Cover({ children }: { readonly children: ReactNode }) {
  const cover = useRef<HTMLDivElement>(null);
  useOutOfReach(true, '.people-cover');
  useEffect(() => {
    const before = document.activeElement;
    cover.current?.querySelector<HTMLElement>('input')?.focus();
    return () => (before instanceof HTMLElement ? before.focus() : undefined);
  }, []);
  return createPortal(
    <div ref={cover} className="people-cover">
      {children}
    </div>,
    document.body,
  );
}

const isBadge = (code: string): boolean => parseTag(code) !== undefined;

/** Leaves the step under way within reach, and nothing else; a badge that is scanned brings its person. */
export function OnlyTheStep(props: {
  readonly people: readonly OfTheShop[];
  readonly scanSign: string | undefined;
  readonly onComes: (who: StaffId) => void;
}): null {
  const { people, scanSign, onComes } = props;
  useOutOfReach(true, STAYS);
  useScan({ check: isBadge, ...(scanSign !== undefined && { prefix: scanSign }) }, (code) => {
    const person = ofBadge(people, code);
    if (person) onComes(person.id);
  });
  return null;
}

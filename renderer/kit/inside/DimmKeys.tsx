import { type CSSProperties, useEffect, useRef } from 'react';
import { useWords } from '../text/words.tsx';
import type { InsidePart, InsideSlot } from './model.ts';
import { slotSaid } from './words.ts';

export type DimmKeysProps = {
  readonly dimms: readonly InsideSlot[];
  readonly inHand: InsidePart | null;
  readonly style: CSSProperties;
  readonly onPress: (slot: string) => void;
  readonly onClose: () => void;
};

/** The row of memory slots as keys of 64 px, since the slots themselves are too narrow for a gloved finger. */
export function DimmKeys({ dimms, inHand, style, onPress, onClose }: DimmKeysProps) {
  const words = useWords();
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset brings its own box; this groups keys over the drawing
    <div
      className="k-dimm-keys"
      role="group"
      aria-label={words.t('kit.inside.bank-keys')}
      style={style}
      onKeyDown={(event) => {
        const keys = [...event.currentTarget.querySelectorAll('button')];
        const at = event.target instanceof HTMLButtonElement ? keys.indexOf(event.target) : -1;
        const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
        if (step !== 0) keys[at + step]?.focus();
        if (event.key === 'Escape') onClose();
      }}
    >
      {dimms.map((one, i) => (
        <button
          key={one.slot.id}
          ref={i === 0 ? first : undefined}
          type="button"
          aria-label={slotSaid(one, words)}
          aria-pressed={inHand !== null && one.holds?.id === inHand.id}
          className={one.holds ? `k-dimm-key k-dimm-${one.holds.whose}` : 'k-dimm-key k-dimm-none'}
          onClick={() => onPress(one.slot.id)}
        >
          <b>{one.slot.id}</b>
          <small>
            {one.holds
              ? one.holds.whose === 'shop'
                ? words.t('kit.mark.shop')
                : words.t(one.holds.standing === 'plain' ? 'kit.mark.owner' : `kit.mark.${one.holds.standing}`)
              : words.t(one.away ? 'kit.inside.out' : 'kit.inside.empty')}
          </small>
        </button>
      ))}
      <button type="button" className="k-dimm-key k-dimm-close" onClick={onClose}>
        <small>{words.t('kit.close')}</small>
      </button>
    </div>
  );
}

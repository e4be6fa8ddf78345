import { type HTMLAttributes, useState } from 'react';
import { PartSwatch } from '../mark/PartSwatch.tsx';
import { useWords } from '../text/words.tsx';
import type { InsidePart, InsidePlace } from './model.ts';

export type PlacesProps = {
  readonly places: readonly InsidePlace[];
  readonly inHand: InsidePart | null;
  readonly grip: (part: InsidePart | null) => Pick<HTMLAttributes<HTMLElement>, 'onPointerDown'>;
  readonly onDrop: (place: string) => void;
  readonly onTake: (part: InsidePart) => void;
};

/** Tray, bench, rig: press with a part in hand to put it down there; press otherwise to see what lies there and take it up. */
export function Places({ places, inHand, grip, onDrop, onTake }: PlacesProps) {
  const { t } = useWords();
  const [open, setOpen] = useState<string | null>(null);
  return (
    <div className="k-places">
      {places.map((place) => {
        const shown = open === place.id && place.holds.length > 0;
        return (
          <div key={place.id} className="k-place">
            <button
              type="button"
              className="k-place-key"
              data-drop={`place:${place.id}`}
              aria-expanded={shown}
              onClick={() => {
                if (inHand && !place.holds.some((part) => part.id === inHand.id)) return onDrop(place.id);
                setOpen(shown ? null : place.id);
              }}
            >
              {t('kit.inside.place', { name: place.name, n: place.holds.length })}
            </button>
            {shown && (
              <ul className="k-place-list" aria-label={place.name}>
                {place.holds.map((part) => (
                  <li key={part.id}>
                    <button
                      type="button"
                      {...grip(part)}
                      aria-pressed={part.id === inHand?.id}
                      onClick={() => {
                        setOpen(null);
                        onTake(part);
                      }}
                    >
                      <PartSwatch
                        look={{ is: 'part', whose: part.whose, standing: part.standing, known: part.known }}
                        id={part.id}
                      />
                      <span>
                        <b>{part.what}</b>
                        {part.whose === 'shop'
                          ? `, ${t('kit.mark.shop')} ${part.tag ?? ''}`
                          : `, ${t('kit.mark.owner')}`}
                      </span>
                    </button>
                  </li>
                ))}
              </ul>
            )}
          </div>
        );
      })}
    </div>
  );
}

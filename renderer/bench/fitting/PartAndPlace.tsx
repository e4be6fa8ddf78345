import type { Part } from '../../../core/custody/ledger.ts';
import { useWords } from '../../kit/text/words.tsx';
import { placeWords } from '../inside/insideOf.ts';

/** A part by its name, and where it is. */
export function PartAndPlace({ part }: { readonly part: Part }) {
  const words = useWords();
  return (
    <div>
      <b>{part.name}</b>
      <div className="k-small k-muted">
        {part.place.at === 'slot' ? part.place.slot : placeWords(part.place, words)}
      </div>
    </div>
  );
}

import type { Part } from '../../../core/custody/ledger.ts';
import type { PartId } from '../../../core/ids.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';

/** One of these parts, by name; none chosen beforehand. */
export function OneOfParts({
  asks,
  parts,
  chosen,
  onChoose,
}: {
  readonly asks: string;
  readonly parts: readonly Part[];
  readonly chosen: PartId | null;
  readonly onChoose: (part: Part | null) => void;
}) {
  return (
    <div className="counter-one-of">
      <span className="counter-asks" aria-hidden="true">
        {asks}
      </span>
      <ChoiceKeys
        label={asks}
        mode="one"
        choices={parts.map(({ id, name }) => ({ id, says: name }))}
        chosen={chosen === null ? [] : [chosen]}
        onChoose={([id]) => onChoose(parts.find((one) => one.id === id) ?? null)}
      />
    </div>
  );
}

import type { Thing } from '../../../../core/job/told.ts';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';

/** Things ticked one by one: none is ticked beforehand. */
export function TickedBack({
  label,
  none,
  things,
  ticked,
  onTick,
}: {
  readonly label: string;
  readonly none: string;
  readonly things: readonly Thing[];
  readonly ticked: readonly string[];
  readonly onTick: (ticked: readonly string[]) => void;
}) {
  if (things.length === 0) return <p className="k-muted">{none}</p>;
  return (
    <>
      <p className="counter-asks" aria-hidden="true">
        {label}
      </p>
      <ChoiceKeys
        label={label}
        choices={things.map(({ thing, count }) => ({ id: thing, says: count === 1 ? thing : `${count} × ${thing}` }))}
        chosen={ticked}
        onChoose={onTick}
      />
    </>
  );
}

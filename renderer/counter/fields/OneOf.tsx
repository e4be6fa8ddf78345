import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** A question with a few equal keys, none chosen beforehand. Names come from `counter.<words>.<id>`. */
export function OneOf<Id extends string>({
  asks,
  words,
  ids,
  chosen,
  onChoose,
  quiet = false,
}: {
  readonly asks: string;
  readonly words: string;
  readonly ids: readonly Id[];
  readonly chosen: Id | null;
  readonly onChoose: (id: Id | null) => void;
  /** The row already says what is asked; the question is heard only. */
  readonly quiet?: boolean;
}) {
  const { t } = useWords();
  return (
    <div className="counter-one-of">
      {!quiet && (
        <span className="counter-asks" aria-hidden="true">
          {asks}
        </span>
      )}
      <ChoiceKeys
        label={asks}
        mode="one"
        choices={ids.map((id) => ({ id, says: t(`counter.${words}.${id}`) }))}
        chosen={chosen === null ? [] : [chosen]}
        onChoose={([id]) => onChoose(ids.find((one) => one === id) ?? null)}
      />
    </div>
  );
}

import type { IdOf, WordGroup } from '../../catalogue.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';

type CounterGroup = WordGroup extends infer Group ? (Group extends `counter.${infer Name}` ? Name : never) : never;

/** A question with a few equal keys, none chosen beforehand. Names come from `counter.<words>.<id>`. */
export function OneOf<Group extends CounterGroup, Id extends IdOf<`counter.${Group}`>>({
  asks,
  words,
  ids,
  chosen,
  onChoose,
  quiet = false,
}: {
  readonly asks: string;
  readonly words: Group;
  readonly ids: readonly Id[];
  readonly chosen: Id | null;
  readonly onChoose: (id: Id | null) => void;
  /** The row already says what is asked; the question is heard only. */
  readonly quiet?: boolean;
}) {
  const { named } = useWords();
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
        choices={ids.map((id) => ({ id, says: named(`counter.${words}`, id) }))}
        chosen={chosen === null ? [] : [chosen]}
        onChoose={([id]) => onChoose(ids.find((one) => one === id) ?? null)}
      />
    </div>
  );
}

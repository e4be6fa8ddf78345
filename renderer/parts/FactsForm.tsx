import { useState } from 'react';
import type { Part } from '../../core/custody/ledger.ts';
import { isAttributeName } from '../../core/fit/attributes.ts';
import { asTyped, typedAttributes } from '../../core/fit/typedFact.ts';
import type { JobId } from '../../core/ids.ts';
import { TextField } from '../kit/fields/TextField.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { useExecute } from '../link/useExecute.ts';
import { FactFields } from './FactFields.tsx';
import { type TypedFacts, writtenFacts } from './writtenFacts.ts';

type FactsFormProps = {
  readonly part: Pick<Part, 'id' | 'kind' | 'name' | 'attributes'>;
  /** The job under which an owner's part is looked at; null for ours. */
  readonly job: JobId | null;
  readonly onDone: () => void;
};

/** What is known of a part, as somebody who looks at it reads it off: its name and its facts. */
export function FactsForm({ part, job, onDone }: FactsFormProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [name, setName] = useState(part.name);
  const [touched, setTouched] = useState<TypedFacts>({});
  const recorded: TypedFacts = Object.fromEntries(
    typedAttributes(part.kind).map((fact) => [fact, asTyped(part.attributes[fact])]),
  );
  const changed = Object.keys(touched).length > 0 || name.trim() !== part.name;
  const write = async () => {
    const done = await execute('correctPart', { part: part.id, job, name: name.trim(), facts: writtenFacts(touched) });
    if (done) onDone();
  };
  return (
    <form
      className="parts-form"
      aria-label={t('wall.facts.of', { name: part.name })}
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
    >
      <TextField label={t('wall.name')} labelled="above" value={name} onChange={setName} />
      <FactFields
        kind={part.kind}
        facts={{ ...recorded, ...touched }}
        onChange={(now) => setTouched(changedFrom(recorded, now))}
      />
      <Key submit {...(changed && name.trim() ? {} : { whyNot: t('wall.facts.needs') })}>
        {t('wall.facts.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}

const changedFrom = (recorded: TypedFacts, now: TypedFacts): TypedFacts =>
  Object.fromEntries(Object.entries(now).filter(([name, typed]) => !isAttributeName(name) || recorded[name] !== typed));

import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { FactsForm } from '../../parts/FactsForm.tsx';

/** Facts of whatever sits in the machine now, or belongs there: which one, and what is read off it. */
export function FactsOfPart({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { machine, job } = sheet;
  const [chosen, setChosen] = useState<string | null>(null);
  const slotOf: ReadonlyMap<string, string> = new Map(
    [...Object.entries(machine.atTakingIn), ...Object.entries(machine.inside)].map(([slot, id]) => [id, slot]),
  );
  const parts = sheet.parts.filter(({ id, place }) => slotOf.has(id) && place.at !== 'gone');
  const part = parts.find(({ id }) => id === chosen);
  return (
    <div className="parts-facts">
      {parts.length === 0 && <p>{t('bench.facts-none')}</p>}
      <ChoiceKeys
        label={t('bench.facts')}
        mode="one"
        choices={parts.map(({ id, name }) => ({ id, says: `${slotOf.get(id)}: ${name}` }))}
        chosen={chosen === null ? [] : [chosen]}
        onChoose={([id]) => setChosen(id ?? null)}
      />
      {part && <FactsForm key={part.id} part={part} job={job.id} onDone={() => setChosen(null)} />}
    </div>
  );
}

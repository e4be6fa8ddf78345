import { useQuery } from '@tanstack/react-query';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { dayLineRead } from '../../link/reads.ts';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

/** Held for an open job until that ends; the first of two who want it has it. */
export function HoldPart({ part, onDone }: { readonly part: WallPart; readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const jobs = useQuery(dayLineRead()).data?.points ?? [];
  return (
    <>
      <ChoiceKeys
        label={t('wall.hold')}
        labelled="above"
        mode="one"
        choices={jobs.map((one) => ({ id: one.job, says: one.called }))}
        chosen={[]}
        onChoose={([id]) => {
          const job = jobs.find((one) => one.job === id)?.job;
          if (job) void execute('reservePart', { part: part.id, job }).then((done) => done && onDone());
        }}
      />
      {problem && <Problem slim {...problem} />}
    </>
  );
}

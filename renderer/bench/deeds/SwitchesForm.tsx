import type { JobSheet } from '../../../core/contract/screens.ts';
import { SWITCHES } from '../../../core/tracing/live/model/assemblyStates.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';

/** Facts asked once at the first look, each written when pressed; what nobody looked at stays not known. */
export function SwitchesForm({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const answers = sheet.machine.switches;
  return (
    <section className="bench-form" aria-label={t('bench.switches')}>
      {SWITCHES.map((id) => {
        const answer = answers[id];
        return (
          <div key={id} className="bench-row">
            <span>{t(`bench.switch.${id}`)}</span>
            <ChoiceKeys
              label={t(`bench.switch.${id}`)}
              mode="one"
              choices={[
                { id: 'yes', says: t('kit.yes') },
                { id: 'no', says: t('kit.no') },
              ]}
              chosen={typeof answer === 'boolean' ? [answer ? 'yes' : 'no'] : []}
              onChoose={([chosen]) =>
                void execute('answerSwitches', {
                  job: sheet.job.id,
                  switches: { [id]: chosen === undefined ? null : chosen === 'yes' },
                })
              }
            />
          </div>
        );
      })}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}

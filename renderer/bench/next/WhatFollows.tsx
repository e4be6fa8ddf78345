import { useQuery } from '@tanstack/react-query';
import type { JobId } from '../../../core/ids.ts';
import type { Currency } from '../../../core/money/money.ts';
import { useWords } from '../../kit/text/words.tsx';
import { planAheadRead } from '../../link/reads.ts';
import { kindName, stepName } from '../../terms/terms.ts';

export type WhatFollowsProps = {
  readonly job: JobId;
  readonly currency: Currency | undefined;
  /** The step stands: what follows it is asked for only then. */
  readonly stands: boolean;
};

/** The two steps that would likeliest follow the one on offer, and what the owner may have to pay for. */
export function WhatFollows({ job, currency, stands }: WhatFollowsProps) {
  const words = useWords();
  const { t, odds } = words;
  const { data } = useQuery({ ...planAheadRead(job), enabled: stands });
  if (!stands || !data) return null;
  const { follows, remedies } = data;
  return (
    <>
      {follows.length > 0 && (
        <section aria-labelledby="bench-then">
          <h3 id="bench-then">{t('bench.plan.then')}</h3>
          <ol className="bench-list">
            {follows.map(({ step, handsOn, waiting }, at) => (
              <li key={`${at + 1} ${step}`}>
                <span>{stepName(step)}</span>
                <span>{t('kit.step.minutes', { hands: Math.round(handsOn), waiting: Math.round(waiting) })}</span>
              </li>
            ))}
          </ol>
        </section>
      )}
      {remedies.length > 0 && currency !== undefined && (
        <section aria-labelledby="bench-remedies">
          <h3 id="bench-remedies">{t('bench.plan.remedies')}</h3>
          <ul className="bench-list">
            {remedies.map(({ part, p, priceMinor }) => (
              <li key={part}>
                <span>{kindName(part)}</span>
                <span>
                  {t('bench.plan.remedy', {
                    odds: odds(p),
                    amount: words.moneyShort({ minor: priceMinor, currency }),
                  })}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

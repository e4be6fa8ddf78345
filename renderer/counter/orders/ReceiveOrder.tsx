import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { PART_KINDS } from '../../../core/custody/part.ts';
import type { PartId } from '../../../core/ids.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wallRead } from '../../link/reads.ts';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';
import type { OfOrder } from './ofOrder.ts';

const isPart = (kind: string): boolean => PART_KINDS.some((one) => one === kind);
const AS = ['ordered', 'wrong', 'dead', 'dearer'] as const;

/** What came is held against the order: which part it is, as what it came, what it costs now. */
export function ReceiveOrder({ sheet, settings, order }: OfOrder) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const wall = useQuery(wallRead());
  const { currency } = settings;
  const [as, setAs] = useState<(typeof AS)[number] | null>(null);
  const [part, setPart] = useState<PartId | null>(null);
  const [priceMinor, setPrice] = useState<number | null>(null);
  // What just came was put up last.
  const here = (wall.data?.parts ?? [])
    .filter(({ kind, place, reservedFor }) => isPart(kind) && place.at === 'bin' && reservedFor === null)
    .toSorted((a, b) => b.since - a.since);
  const needsPart = as === 'ordered' || as === 'dearer';
  return (
    <>
      <OneOf asks={t('counter.order.came')} words="order.as" ids={AS} chosen={as} onChoose={setAs} />
      {as !== null && (
        <>
          <p className="k-muted k-small">{t('counter.order.proved')}</p>
          <div className="counter-one-of">
            <span className="counter-asks" aria-hidden="true">
              {t('counter.order.which')}
            </span>
            <ChoiceKeys
              label={t('counter.order.which')}
              mode="one"
              choices={here.map((one) => ({ id: one.id, says: [one.tag, one.name].filter(Boolean).join(' ') }))}
              chosen={part === null ? [] : [part]}
              onChoose={([id]) => setPart(here.find((one) => one.id === id)?.id ?? null)}
            />
          </div>
        </>
      )}
      {as === 'dearer' && (
        <AmountField
          label={t('counter.order.costs-now')}
          labelled="above"
          currency={currency}
          minor={priceMinor}
          onChange={setPrice}
        />
      )}
      {as !== null && (
        <Key
          onPress={() =>
            void execute('receivePart', {
              job: sheet.job.id,
              order: order.order,
              as,
              part,
              priceMinor: as === 'dearer' ? priceMinor : null,
            })
          }
          {...(needsPart && part === null ? { whyNot: t('counter.order.which-first') } : {})}
        >
          {t('counter.order.write')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </>
  );
}

import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { shopRead } from '../../link/reads.ts';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

/** Sold over the counter or given away, with whatever moves with it as one. */
export function SellPart({ part }: { readonly part: WallPart }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const currency = useQuery(shopRead()).data?.settings?.currency;
  const [minor, setMinor] = useState<number | null>(null);
  if (currency === undefined) return null;
  return (
    <>
      {part.riders.length > 0 && <p>{t('wall.sell.with', { n: part.riders.length })}</p>}
      <AmountField
        label={t('wall.sell.price')}
        labelled="above"
        currency={currency}
        minor={minor}
        onChange={setMinor}
      />
      <Key
        wide
        onPress={() => void execute('sellPart', { part: part.id, as: 'sold', priceMinor: minor ?? 0 })}
        {...(minor === null ? { whyNot: t('wall.sell.needs') } : {})}
      >
        {t('wall.sell.do')}
      </Key>
      <Key wide onPress={() => void execute('sellPart', { part: part.id, as: 'given', priceMinor: 0 })}>
        {t('wall.sell.give')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
